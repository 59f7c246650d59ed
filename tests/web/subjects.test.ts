import { describe, expect, test } from 'vitest';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { flowSubjects, levelSubjects } from '../../web/plots/subjects.ts';
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
  },
  pump: { minimum: -0.75 },
  filter: undefined,
  watercourse: [{ kind: 'pool', name: 'upper pool', rim: { cd: 1, crest: [[0, 0.75]] } }],
} as unknown as Scenario;

describe('what is drawn of a run', () => {
  test('levels are told from the lowest point of a basin’s edge, or from the datum where it has none', () => {
    const series = { t, flows: {}, levels: { vault: column(0, 0), pond: column(0, 0), 'upper pool': column(0, 0) } };
    const subjects = levelSubjects(series, site, basinName);
    expect(subjects.map(({ name, edge }) => [name, edge])).toEqual([
      ['pond', 0],
      ['pump vault', undefined],
      ['upper pool', 0.75],
    ]);
    expect(subjects[0]!.marks.map(({ name, value }) => [name, value])).toEqual([
      ['edge', 0],
      ['fill mark', -0.08],
    ]);
  });

  test('flows that never moved are named and not drawn, a reversed one is drawn', () => {
    const flows = { gap: column(0, -1e-6), rim: column(0, 0), main: column(0.002, 0) };
    const { moved, still } = flowSubjects({ t, levels: {}, flows }, flowName);
    expect(moved.map(({ name }) => name)).toEqual(['main line', 'gap round the mats']);
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
