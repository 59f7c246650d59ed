import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Crest, Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { stopsOf } from '../../sim/studies/quick.ts';
import { YEAR, yearLater } from '../../sim/studies/yearLater.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const fileOf = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

function siteOf(file: unknown): Scenario {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

const later = (file: unknown): Scenario => siteOf(withValuesAt(file, yearLater(file).edits));
const heights = ({ crest }: Crest): number[] => crest.map(([, z]) => z);
const lowest = (crest: Crest): number => Math.min(...heights(crest));

describe('a year later', () => {
  test.each(names)('%s has sunk, leans, is half blocked and its pump a tenth slower, and nothing else', (name) => {
    const file = fileOf(name);
    const [before, after] = [siteOf(file), later(file)];
    expect(yearLater(file).left).toEqual([]);
    heights(after.pond.rim).forEach((z, i) => {
      expect(z).toBeCloseTo(before.pond.rim.crest[i][1] - YEAR.settled, 6);
    });
    expect(after.intake).toEqual({ ...before.intake, blockage: YEAR.blocked });
    if (before.filter && after.filter) {
      const lip = heights(after.filter.lip);
      expect(lip[lip.length - 1] - lip[0]).toBeCloseTo(YEAR.leaning, 5);
      expect(lowest(after.filter.lip)).toBeCloseTo(lowest(before.filter.lip) - YEAR.leaning / 2, 5);
      expect({ ...after.filter, lip: 0, rim: 0 }).toEqual({ ...before.filter, lip: 0, rim: 0 });
    }
    const rest = ({
      pond: { rim, ...pond },
      intake,
      filter,
      pump: { curve, ...pump },
      assumed,
      sketched,
      ...site
    }: Scenario) => ({
      ...site,
      pond,
      pump,
    });
    expect(rest(after)).toEqual(rest(before));
  });

  // Affinity laws: flow goes with speed, head with its square (Karassik et al., Pump Handbook, from memory).
  test.each(names)('the pump of %s gives what it gave, at nine tenths of its speed', (name) => {
    const [before, after] = [siteOf(fileOf(name)).pump.curve, later(fileOf(name)).pump.curve];
    const points = (curve: Scenario['pump']['curve']) =>
      curve.kind === 'box' ? [[curve.flow, curve.head]] : curve.points.map(([q, h]) => [q, h]);
    points(after).forEach(([q, h], i) => {
      expect(q).toBeCloseTo(0.9 * points(before)[i][0], 8);
      expect(h).toBeCloseTo(0.81 * points(before)[i][1], 4);
    });
  });

  test('figures stay in the units they were typed in', () => {
    const edits = new Map(yearLater(fileOf('courtyard.json')).edits);
    expect(edits.get('pond.rim.crest')).toEqual([
      [0, -0.025],
      ['0.8 m', -0.025],
      ['1.6 m', '-10 mm'],
    ]);
    expect(edits.get('pump.curve')).toEqual([
      [0, '4.05 m'],
      ['81 L/min', '3.726 m'],
      ['162 L/min', '2.916 m'],
      ['234 L/min', '1.539 m'],
    ]);
    expect(edits.get('filter.lip.crest')).toEqual([
      [0, '1.045 m'],
      ['0.48 m', '1.055 m'],
    ]);
  });

  test('an edge that would sink under the fill mark is left as it is, and told', () => {
    const file = withValuesAt(fileOf('courtyard.json'), [['pond.fillMark', '-10 mm']]);
    const { left, done } = yearLater(file);
    expect(left).toEqual(['the edge 25 mm lower, where it lies on fill']);
    expect(done).toHaveLength(3);
    expect(later(file).pond.rim).toEqual(siteOf(file).pond.rim);
  });

  test('a screen that is worse already stays so; a file with problems has no later year', () => {
    const file = withValuesAt(fileOf('courtyard.json'), [['intake.blockage', 0.7]]);
    expect(later(file).intake.blockage).toBe(0.7);
    expect(yearLater({ title: 'nothing' })).toEqual({ edits: [], done: [], left: [] });
  });

  test('leaves the courtyard less room at a stop, by all but 25 mm: less runs back, the edge is lower', () => {
    const rooms = [siteOf(fileOf('courtyard.json')), later(fileOf('courtyard.json'))].map(
      (site) => stopsOf(site, run(site).record)?.sound.below ?? Number.NaN,
    );
    expect(rooms[0] - rooms[1]).toBeGreaterThan(0.015);
    expect(rooms[0] - rooms[1]).toBeLessThan(0.03);
  });
});
