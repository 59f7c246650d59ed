/** How media and the gap round them stand in a drawing: the gap wider than it is, media that float lifted off their rack. */
import { gapVelocity, liftHead } from '../../sim/laws/media.ts';
import { density, kinematicViscosity } from '../../sim/laws/water.ts';
import type { Media, Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import type { Scale } from './scale.ts';
import type { FilterScene } from './scene.ts';

/** How many times as wide as it is the gap is drawn in a close-up, as long as it takes no more than a part of the vessel. */
const WIDER = 8;
const MOST = 0.14;
/** Of the vessel a gap drawn as wide as it is takes no more than this. */
const ALL = 0.42;
/** Width of any gap in a drawing of the whole site, px. */
const SMALL = 3.2;
/** Floating media are drawn so high off the rack at the least and at the most, m, and higher by the gap they open. How far
 * they rise is not computed. */
const AFLOAT = { least: 0.012, by: 3, most: 0.04 };

export interface Bed {
  /** Width of the gap on either side, px. */
  readonly gap: number;
  /** How high the media are drawn off their rack, m. */
  readonly lifted: number;
}

/** The bed of a filter at a moment. */
export function bedAt({ cut }: FilterScene, media: Media, s: Scenario, { levels, flows }: Moment, scale: Scale): Bed {
  const opened = openedGap(media, s, levels.filter ?? media.bottom, (flows.media ?? 0) >= 0 ? (flows.gap ?? 0) : 0);
  const lifted = opened > 0 ? Math.min(AFLOAT.most, AFLOAT.least + AFLOAT.by * opened) : 0;
  return { gap: drawnGap(media.gap + opened, scale.a * cut.width, scale), lifted };
}

/** The bed at rest. */
export const bedAtRest = ({ cut }: FilterScene, { gap }: Media, scale: Scale): Bed => ({
  gap: drawnGap(gap, scale.a * cut.width, scale),
  lifted: 0,
});

function drawnGap(gap: number, vessel: number, { closeUp, a }: Scale): number {
  if (gap <= 0) return 0;
  if (!closeUp) return SMALL;
  const asItIs = Math.min(ALL * vessel, a * gap);
  return Math.min(WIDER * a * gap, Math.max(MOST * vessel, asItIs));
}

const velocity = new Float64Array(4);

/**
 * By how much floating media have opened their gap, m, read from the flow round them: at rest, and up to the head that
 * lifts them, the gap takes no more than its own width lets through; what takes more has been opened by the lift.
 *
 * @param level of the filter's water, m
 * @param round flow up the gap, m³/s
 */
export function openedGap(media: Media, s: Scenario, level: number, round: number): number {
  const { bottom, perimeter, gap, liftSlack, layers, submergedWeight, holdDown, area } = media;
  const length = Math.min(
    level - bottom,
    layers.reduce((sum, { thickness }) => sum + thickness, 0),
  );
  if (!(length > 0 && round > 0)) return 0;
  const { temperature } = s.water;
  const viscosity = kinematicViscosity(temperature);
  const lift = liftHead(submergedWeight + holdDown, area, density(temperature));
  const opened = (over: number): number => liftSlack * over;
  const takes = (over: number): number => {
    const width = gap + opened(over);
    gapVelocity((1 + over) * lift, length, width, viscosity, velocity);
    return perimeter * width * velocity[0];
  };
  if (takes(0) >= round) return 0;
  let [low, high] = [0, 1];
  for (let i = 0; i < 40 && takes(high) < round; i++) high *= 2;
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2;
    if (takes(mid) < round) low = mid;
    else high = mid;
  }
  return opened(high);
}
