import { settledVolume } from '../results/asSet.ts';
import type { Column } from '../results/csv.ts';
import { depositsAt } from '../results/deposits.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { wasteCourse } from './course.ts';

/**
 * What the water brings along, as columns beside a run's levels and flows: settled volume in each layer of the media,
 * m³, where anything settles, and waste in the pond, kg/m³, where there is any.
 *
 * @param t moments of the run, s, ascending
 */
export function broughtColumns(s: Scenario, record: RunRecord, t: Float64Array): Column[] {
  return [...depositColumns(record, t), ...wasteColumns(s, record, t)];
}

/** Whether a run of the site has any such columns. */
export const bringsAnything = (s: Scenario): boolean => hasWaste(s) || s.debris > 0 || settledVolume(s) > 0;

const hasWaste = ({ load, concentration }: Scenario): boolean => load !== 0 || concentration !== 0;

function depositColumns(record: RunRecord, t: Float64Array): Column[] {
  const { clogging } = record.network.parts;
  if (clogging === undefined) return [];
  const rows = Array.from(t, (each) => depositsAt(record, each));
  return clogging.layers.map(({ name }) => ({
    head: `settled in ${name}[m3]`,
    values: Float64Array.from(rows, (row) => row[name]),
  }));
}

/** Evenly between the rows of the record, as near as its steps are short. */
function wasteColumns(s: Scenario, record: RunRecord, t: Float64Array): Column[] {
  if (!hasWaste(s)) return [];
  const { t: at, concentration } = wasteCourse(s, record);
  let row = 0;
  const values = Float64Array.from(t, (each) => {
    while (row + 1 < at.length && at[row + 1] <= each) row++;
    const next = Math.min(row + 1, at.length - 1);
    const size = at[next] - at[row];
    const part = size > 0 ? (each - at[row]) / size : 0;
    return concentration[row] + part * (concentration[next] - concentration[row]);
  });
  return [{ head: 'waste[kg/m3]', values }];
}
