import { areaAt, makeStorage, volumeAt } from '../../laws/storage.ts';
import { formatPercent, formatVolume } from '../../quantity/index.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

/** What the pond truly holds at its fill mark, and what a centimeter or an inch of level is worth. */
export function volumeCheck({ scenario }: CheckInput): Check | undefined {
  const { pond, display } = scenario;
  if (pond.fillMark === undefined) return undefined;
  const storage = makeStorage(pond.profile, pond.displaced);
  const volume = volumeAt(storage, pond.fillMark);
  const [step, name] = display === 'us' ? [0.0254, 'inch'] : [0.01, 'centimeter'];
  const perStep = areaAt(storage, pond.fillMark) * step;
  const box = pond.boxVolume;
  const beside =
    box === undefined || volume <= 0
      ? ''
      : ` Its box (length × width × depth) would hold ${formatVolume(box, display)}: what is dosed by the box is dosed ` +
        `${formatPercent(box / volume - 1)} too high.`;
  return told({
    name: 'volume',
    value: volume,
    unit: 'm3',
    says:
      `The pond holds ${formatVolume(volume, display)} at its fill mark, rock and shelves out; ` +
      `one ${name} of level is ${formatVolume(perStep, display)}.${beside}`,
  });
}
