/** The dial of what has settled in the media: set by the layer that catches most, the others going along. */
import { capturedShare, depositRoom } from '../../sim/laws/deposit.ts';
import type { Filter, Media } from '../../sim/scenario/scenario.ts';
import type { Caught } from '../../sim/studies/setting.ts';
import { type Dialed, lowest, type Ruler, ruler } from './dials-kinds.ts';

/** The ruler goes to this part of what the layer takes: filters fail long before. */
const FULL = 0.5;
/** A layer stays under its room by so much, however its figure is rounded, m³: the one set, those that go along. */
const [CLEAR, CLEAR_ALONG] = [1e-4, 1e-5];

interface Catching {
  readonly name: string;
  readonly place: string;
  readonly deposit: number;
  /** Of what comes to the media, 0..1. */
  readonly share: number;
  /** Settled volume it takes at the most, m³. */
  readonly room: number;
}

/** From the bottom up: what one layer keeps the next does not get, and the part above the lip gets no water. */
function layersOf(media: Media, lip: Filter['lip']): Catching[] {
  let [left, from] = [1, media.bottom];
  return media.layers.map(({ name, thickness, capture, porosity, beta, deposit }, i) => {
    const wet = Math.min(thickness, Math.max(0, lowest(lip.crest) - from));
    const share = left * capturedShare(capture, wet);
    left -= share;
    from += thickness;
    const place = `filter.media.layers[${i}].deposit`;
    return { name, place, deposit, share, room: depositRoom(porosity, beta, media.area * wet) };
  });
}

/** undefined where nothing settles and nothing has. */
export function muck({ now, ...site }: Dialed): Ruler | undefined {
  const { filter } = now;
  if (!filter?.media) return undefined;
  const layers = layersOf(filter.media, filter.lip);
  const most = layers.reduce((best, each) =>
    each.share > best.share || (best.share === 0 && each.share === 0 && each.deposit > best.deposit) ? each : best,
  );
  const high = FULL * most.room - CLEAR;
  if ((most.share === 0 && most.deposit === 0) || high <= 0) return undefined;
  const along = layers
    .filter((each) => each !== most && each.share > 0 && each.room > CLEAR_ALONG)
    .map(({ place, share, room }): Caught => ({ place, per: share / most.share, most: room - CLEAR_ALONG }));
  const note = along.length > 0 ? 'the others with what they caught by then' : '';
  const setting = { kind: 'muck', place: most.place, along } as const;
  return ruler({ now, ...site }, `muck in the ${most.name}`, setting, [0, high], most.deposit, note);
}
