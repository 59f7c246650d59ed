/** Added rows against the cubic inside each step: Hairer & Wanner, Solving ODEs II, IV.7, dense output. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { levelOf } from '../../sim/laws/storage.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import { refinedSeries, seriesOf } from '../../sim/results/series.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { run } from '../../sim/simulate.ts';
import { momentAt } from '../../web/state/moment.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const sites = readdirSync(folder).filter((file) => file.endsWith('.json'));
const WITHIN = 1e-4;

describe.each(sites)('the refined series of %s', (file) => {
  const reading = readScenario(readFileSync(new URL(file, folder), 'utf8'));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { record } = run(reading.scenario);
  const refined = refinedSeries(record, WITHIN);

  test('keeps every row of the record, bit for bit', () => {
    const own = seriesOf(record);
    const at = new Map<number, number[]>();
    refined.t.forEach((t, k) => {
      at.set(t, [...(at.get(t) ?? []), k]);
    });
    own.t.forEach((t, row) => {
      const rows = at.get(t)!;
      expect(
        rows.some((k) => Object.keys(own.levels).every((name) => refined.levels[name][k] === own.levels[name][row])),
      ).toBe(true);
    });
  });

  test('is ascending in time', () => {
    expect(refined.t.every((t, k) => k === 0 || t >= refined.t[k - 1])).toBe(true);
  });

  test('is followed by straight lines to a tenth of a millimeter at every level', () => {
    const { basins } = record.network.parts;
    const volumes = new Float64Array(basins.length);
    let worst = 0;
    for (let row = 0; row + 1 < record.length; row++) {
      if (record.restarts(row + 1)) continue;
      for (let k = 1; k < 40; k++) {
        const t = record.time(row) + (k / 40) * (record.time(row + 1) - record.time(row));
        volumesAt(record, t, volumes);
        const { levels } = momentAt(refined, t);
        basins.forEach(({ name, storage }, i) => {
          worst = Math.max(worst, Math.abs(levels[name] - levelOf(storage, volumes[i])));
        });
      }
    }
    expect(worst).toBeLessThanOrEqual(WITHIN);
  });
});
