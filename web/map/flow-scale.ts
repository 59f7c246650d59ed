/** The second scale of the plane of flow, along its upper edge: the pump's flow at a share, where it is round. Pure. */
import type { OperatingMap } from '../../sim/map/answer.ts';
import { figureAt } from '../../sim/map/between.ts';
import { roundLevels } from '../../sim/map/lines.ts';
import type { Family } from './families.ts';
import type { Tick } from './sheet.ts';

/** Ticks at the most, on a narrow plane and on a wide one; and how far apart their words stand at the least, px. */
const [FEW, MANY, WIDE, APART] = [4, 8, 400, 40];
/** Places along the speeds at which the flow is read. */
const READ = 240;

/**
 * @param family of the pump's flow
 * @param across length of the scale, px
 */
export function flowTicks(map: OperatingMap, share: number, { unit, level }: Family, across: number): Tick[] {
  const [from, to] = [map.x[0], map.x[map.x.length - 1]];
  const read = Array.from({ length: READ + 1 }, (_, i) => from + ((to - from) * i) / READ).map((speed) => ({
    speed,
    flow: figureAt(map, 'flow', speed, share),
  }));
  const placed = roundLevels(map, 'flow', unit, across > WIDE ? MANY : FEW).flatMap((flow) => {
    const after = read.findIndex((each, i) => i > 0 && (each.flow ?? -1) >= flow && (read[i - 1].flow ?? flow) < flow);
    if (after < 0) return [];
    const [a, b] = [read[after - 1], read[after]];
    const part = (flow - (a.flow ?? 0)) / ((b.flow ?? 0) - (a.flow ?? 0));
    return [{ value: a.speed + part * (b.speed - a.speed), text: level(flow) }];
  });
  // The last says its unit, the others only their figure.
  return placed
    .map(({ value, text }, i) => ({ value, text: i === placed.length - 1 ? text : text.replace(/ .*/, '') }))
    .filter(({ value }, i, all) => i === 0 || ((value - all[i - 1].value) / (to - from)) * across > APART);
}
