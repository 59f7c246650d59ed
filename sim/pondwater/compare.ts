import { formatConcentration, formatDuration, formatNumber } from '../quantity/index.ts';
import type { PondWater, WaterComparison } from './answer.ts';
import { NO_TEST } from './words.ts';

/** A case by its name, and how it treats its water. */
export interface WaterCase {
  readonly name: string;
  readonly water: PondWater;
}

/** Ratios this near to one are no difference. */
const ALIKE = 0.01;

/**
 * Which of two cases keeps the pond cleaner, and how much: by where the waste settles at the load, or without a load by
 * how fast half of it goes.
 */
export function compareWater(a: WaterCase, b: WaterCase): WaterComparison {
  const bySettled = measures(a.water.steady, b.water.steady);
  const byHalf = measures(a.water.halfLife, b.water.halfLife);
  const found = bySettled ?? byHalf;
  if (found === undefined) return { ratio: null, says: `${neither(a, b)} ${NO_TEST}` };
  const ratio = found[0] / found[1];
  const [cleaner, other] = ratio <= 1 ? [a, b] : [b, a];
  const times = Math.max(ratio, 1 / ratio);
  const how =
    bySettled === undefined
      ? `half of the waste is gone in ${halfOf(cleaner)} instead of ${halfOf(other)}`
      : `the waste settles at ${settledOf(cleaner)} instead of ${settledOf(other)}`;
  const says =
    times < 1 + ALIKE
      ? `‘${a.name}’ and ‘${b.name}’ keep the pond equally clean.`
      : `‘${cleaner.name}’ keeps the pond ${formatNumber(times, times < 10 ? 1 : 0)} times as clean as ‘${other.name}’: ${how}.`;
  return { ratio, says: `${says} ${NO_TEST}` };
}

function measures(a: number | null, b: number | null): [number, number] | undefined {
  return a !== null && b !== null && a > 0 && b > 0 ? [a, b] : undefined;
}

const settledOf = ({ water }: WaterCase): string => formatConcentration(water.steady ?? 0);
const halfOf = ({ water }: WaterCase): string => formatDuration(water.halfLife ?? 0);

/** Where at least one of them removes nothing. */
function neither(a: WaterCase, b: WaterCase): string {
  const [works, idle] = a.water.halfLife !== null ? [a, b] : [b, a];
  if (works.water.halfLife === null) return `Neither ‘${a.name}’ nor ‘${b.name}’ takes any waste out of the water.`;
  return `‘${works.name}’ takes waste out of the water, ‘${idle.name}’ takes none.`;
}
