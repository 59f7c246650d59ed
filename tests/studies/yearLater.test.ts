import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/index.ts';
import { curveFromBox, curveFromPoints, pumpHead } from '../../sim/laws/pump.ts';
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
      pump: { speed, ...pump },
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

  // Affinity laws: flow goes with speed, head with its square, power with its cube (Karassik et al., Pump Handbook,
  // from memory).
  test.each(names)('the pump of %s gives what it gave, at nine tenths of its speed', (name) => {
    const { curve, speed } = later(fileOf(name)).pump;
    expect(curve).toEqual(siteOf(fileOf(name)).pump.curve);
    const law = curve.kind === 'box' ? curveFromBox(curve.flow, curve.head) : curveFromPoints(curve.points);
    const out = new Float64Array(3);
    for (const [q, h] of curve.kind === 'box' ? [[0, curve.head] as const] : curve.points) {
      pumpHead(law, 0.9 * q, speed, 0, out);
      expect(out[0]).toBeCloseTo(0.81 * h, 9);
    }
  });

  test('and draws what it drew there by the cube: no watts of full speed are told of a slower pump', () => {
    // A constant of its box: 190 W become 0.729 × 190 W, wherever on its curve it works.
    expect(balance(siteOf(fileOf('gravel-basin.json'))).duty.power).toBeCloseTo(190, 9);
    expect(balance(later(fileOf('gravel-basin.json'))).duty.power).toBeCloseTo(0.729 * 190, 9);
  });

  test('a pump driven slower already, by its file or by an action of the day, goes slower from there', () => {
    const at = (speed: unknown, to: unknown) =>
      withValuesAt(fileOf('courtyard.json'), [
        ['pump.speed', speed],
        [
          'actions',
          [
            { at: '1 h', do: 'pump', to },
            { at: '2 h', do: 'pump', to: 'on' },
          ],
        ],
      ]);
    const edits = new Map(yearLater(at('80 %', 0.6)).edits);
    expect(edits.get('pump.speed')).toBe('72 %');
    expect(edits.get('actions[0].to')).toBe(0.54);
    expect(edits.has('actions[1].to')).toBe(false);
    // A file takes no less than a tenth of full speed.
    expect(new Map(yearLater(at(0.105, 'off')).edits).get('pump.speed')).toBe(0.1);
    expect(yearLater(at(0.1, 'off')).done.join()).not.toContain('slower');
  });

  test('the pump of a sketch gets its speed beside the sketch, which lays nothing out anew for it', () => {
    const file = fileOf('backyard.json');
    const edits = new Map(yearLater(file).edits);
    expect(edits.get('pump.speed')).toBe(0.9);
    expect(edits.has('pump')).toBe(false);
    const slower = siteOf(withValuesAt(file, [['pump.speed', 0.9]]));
    const { pump, assumed: _a, sketched: _s, ...rest } = slower;
    const { pump: full, assumed: _b, sketched: _t, ...same } = siteOf(file);
    expect(rest).toEqual(same);
    expect(pump).toEqual({ ...full, speed: 0.9 });
  });

  test('figures stay in the units they were typed in', () => {
    const edits = new Map(yearLater(fileOf('courtyard.json')).edits);
    expect(edits.get('pond.rim.crest')).toEqual([
      [0, -0.025],
      ['0.8 m', -0.025],
      ['1.6 m', '-10 mm'],
    ]);
    expect(edits.get('pump.speed')).toBe(0.9);
    expect(edits.has('pump.curve')).toBe(false);
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
