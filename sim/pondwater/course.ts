import { FIRST_OUT, LEDGER } from '../network/ledger.ts';
import { storedAt } from '../results/ledger.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { WasteCourse } from './answer.ts';

/**
 * The waste in all circulating water over a run, as one well mixed volume: d(cV)/dt = W − (η Q_media + losses) c.
 *
 * Water that comes in by hose, autofill, rain or runoff dilutes; what leaves takes its waste along, but for evaporation. Each step
 * of the record is solved exactly for even rates and a volume that changes evenly, from the run's own integrals of what
 * was treated and lost; what left is the difference, so that mass is kept to rounding however long a step is.
 */
export function wasteCourse({ load, concentration }: Scenario, record: RunRecord): WasteCourse {
  const t = new Float64Array(record.length);
  const c = new Float64Array(record.length);
  const start = concentration * storedAt(record, 0);
  let mass = start;
  let removed = 0;
  let lost = 0;
  for (let row = 0; row < record.length; row++) {
    t[row] = record.time(row);
    const volume = storedAt(record, row);
    if (row > 0) {
      const step = record.time(row) - record.time(row - 1);
      const treated = record.ledger(row, LEDGER.treated) - record.ledger(row - 1, LEDGER.treated);
      const leaves = lostWater(record, row) - lostWater(record, row - 1);
      const share = (treated + leaves) / logMean(storedAt(record, row - 1), volume);
      const kept = mass * Math.exp(-share) + load * step * decayed(share);
      const out = mass + load * step - kept;
      const byMedia = treated + leaves > 0 ? treated / (treated + leaves) : 0;
      removed += out * byMedia;
      lost += out * (1 - byMedia);
      mass = kept;
    }
    c[row] = volume > 0 ? mass / volume : 0;
  }
  return { t, concentration: c, ledger: { start, load: load * (t[t.length - 1] - t[0]), end: mass, removed, lost } };
}

/** Water that has left with its waste from the start to a row, m³: all that leaves but evaporation. */
function lostWater(record: RunRecord, row: number): number {
  let sum = 0;
  for (let e: number = FIRST_OUT; e < LEDGER.pumped; e++) if (e !== LEDGER.evaporation) sum += record.ledger(row, e);
  return sum;
}

/** Mean by which an even change of volume counts, m³: 1/mean is the mean of 1/V. */
function logMean(a: number, b: number): number {
  const change = (b - a) / a;
  if (!(a > 0 && b > 0)) return Math.max(a, b, Number.MIN_VALUE);
  // The series keeps the digits that the logarithm of a small change would lose.
  return Math.abs(change) < 1e-4 ? a * (1 + change / 2 - (change * change) / 12) : (b - a) / Math.log1p(change);
}

/** (1 − e^−x)/x. */
function decayed(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}
