import { describe, expect, test } from 'vitest';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { flowLines, levelLines, limitsOf } from '../../web/plots/subjects.ts';
import { windowRound } from '../../web/views/moment.ts';
import { basinName, flowName } from '../../web/views/names.ts';

const column = (...values: number[]): Float64Array => Float64Array.from(values);
const t = column(0, 60);

/** The parts of a site that are looked at; the lowest point of the pond's edge is its second. */
const site = {
  pond: {
    rim: {
      cd: 1,
      crest: [
        [0, 0.02],
        [1, 0],
        [2, 0.01],
      ],
    },
    fillMark: -0.08,
    overflow: { elevation: -0.03, diameter: 0.075 },
  },
  pump: { minimum: -0.75 },
  plumbing: {},
  filter: undefined,
  watercourse: [
    { kind: 'pool', name: 'upper pool', stones: [], rim: { cd: 1, crest: [[0, 0.75]] } },
    { kind: 'stream', name: 'run', foot: 0.05, edge: { height: 0.1, length: 1, cd: 1 } },
  ],
} as unknown as Scenario;

describe('what is drawn of a run', () => {
  test('levels are told from the lowest point of a basin’s edge, the vault’s from the pond’s, a stream’s from its bank', () => {
    const levels = {
      riser: column(0, 0),
      vault: column(0, 0),
      pond: column(0, 0),
      'upper pool': column(0, 0),
      run: column(0, 0),
    };
    const lines = levelLines({ t, flows: {}, levels }, site, basinName);
    expect(lines.map(({ name, edge }) => [name, edge])).toEqual([
      ['pond', 0],
      ['water in the pipe', undefined],
      ['pump vault', 0],
      ['upper pool', 0.75],
      ['run', 0.05 + 0.1],
    ]);
  });

  test('the pond’s limits are its edge, the room wanted under it, its overflow and its fill mark', () => {
    expect(limitsOf(site, 0.025).map(({ name, elevation }) => [name, elevation])).toEqual([
      ['edge', 0],
      ['room wanted', -0.025],
      ['overflow', -0.03],
      ['fill mark', -0.08],
    ]);
    expect(limitsOf(site, undefined).map(({ name }) => name)).not.toContain('room wanted');
  });

  test('what runs into the pond stands first; flows that never moved are named and not drawn, a reversed one is drawn', () => {
    const flows = { gap: column(0, -1e-6), rim: column(0, 0), main: column(0.002, 0), run: column(0.002, 0.001) };
    const { moved, still } = flowLines({ t, levels: {}, flows }, site, flowName);
    expect(moved.map(({ name }) => name)).toEqual(['run into the pond', 'main line', 'gap round the mats', 'run']);
    expect(still).toEqual(['over the pond’s edge']);
  });
});

describe('the minutes round a moment', () => {
  test('begin two minutes before it and last twenty', () => {
    expect(windowRound(7200, 86_400)).toEqual([7080, 8280]);
  });

  test('stay within the run', () => {
    expect(windowRound(0, 86_400)).toEqual([0, 1200]);
    expect(windowRound(86_400, 86_400)).toEqual([85_200, 86_400]);
    expect(windowRound(30, 600)).toEqual([0, 600]);
  });

  test('give way to a day where a day is asked for', () => {
    expect(windowRound(40 * 86_400, 90 * 86_400, 86_400)).toEqual([39.9 * 86_400, 40.9 * 86_400]);
  });
});
