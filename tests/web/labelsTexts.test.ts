/** The words of the parts of a site at a moment. */
import { describe, expect, test } from 'vitest';
import {
  labelTexts,
  measureText,
  type Placed,
  reworded,
  wordMarks,
  wordsOfScene,
} from '../../web/section/labels/index.ts';
import { shortName } from '../../web/section/labels/text.ts';
import { px } from '../../web/section/marks.ts';
import { demoSites, type Known, subjectAt, wordsRequest } from './labelsScene.ts';

const sites = demoSites();
const site = (name: string): Known => sites.find((each) => each.name === `${name}.json`)!;

const wordsAt = (known: Known, t: number, display: 'us' | 'metric' = 'metric'): Record<string, string[]> =>
  Object.fromEntries(
    labelTexts(subjectAt(known, t, display)).map(({ id, lines }) => [id, lines.map(({ text }) => text)]),
  );

describe('with the pump running', () => {
  const known = site('courtyard');
  const words = wordsAt(known, 0);
  const { flows, levels } = known.balance!;
  const { scenario } = known;

  test('every basin says where its water stands', () => {
    const mm = (value: number): string => `${(1000 * value).toFixed(0)} mm`;
    expect(words['pond']).toEqual(['pond', `${mm(-levels['pond'])} under its edge`]);
    expect(words['filter']).toEqual(['filter', `${mm(levels['filter'] - 1.05)} over its lip`]);
    expect(words['watercourse[0]']).toEqual(['upper pool', `+${mm(levels['upper pool'])}`]);
    expect(words['watercourse[1]']).toEqual(['stream', `4.20 m long, ${mm(levels['stream'] - 0.04)} deep`]);
  });

  test('pipes say their flow, the tee how it divides', () => {
    expect(words['plumbing.main']).toEqual(['main line', `${(60000 * flows['main']).toFixed(0)} L/min`]);
    const share = Math.round((100 * flows['bottom feed']) / (flows['bottom feed'] + flows['top feed']));
    expect(words['plumbing.tee']).toEqual(['tee', `${share} % to the bottom feed`]);
  });

  test('stones say the water over them and their share', () => {
    const all = flows['broad stone'] + flows['corner stone'];
    const share = Math.round((100 * flows['broad stone']) / all);
    const head = (1000 * (levels['upper pool'] - 0.62)).toFixed(0);
    expect(words['watercourse[0].stones[0]']).toEqual(['broad stone', `${head} mm over it, ${share} % of the flow`]);
  });

  test('what slips round the mats is called the channeled share', () => {
    expect(words['filter.media'][1]).toMatch(/^channeled share \d+\.\d %$/);
  });

  test('in US units every figure is in them', () => {
    const figures = Object.values(wordsAt(known, 0, 'us')).flat();
    expect(figures.filter((text) => / (mm|m|L\/min|m³\/h)\b/.test(text))).toEqual([]);
    expect(figures.some((text) => text.includes(' in ')) && figures.some((text) => text.includes('gp'))).toBe(true);
  });

  test('every part of the file has words', () => {
    const stones = scenario.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
    expect(Object.keys(words).length).toBe(2 + scenario.watercourse.length + stones.length + 3 + 6);
  });
});

describe('after the pump stopped', () => {
  test('nothing flows in the main, and the pump stands', () => {
    const words = wordsAt(site('courtyard'), 6 * 3600 + 1800);
    expect(words['plumbing.main']).toEqual(['main line', 'no flow']);
    expect(words['pump']).toEqual(['pump', 'stands']);
  });

  test('without a check valve the main runs back, and the drawing says that there is none', () => {
    const words = wordsAt(site('courtyard-no-check-valve'), 6 * 3600 + 60);
    expect(words['plumbing.main'][1]).toMatch(/ L\/min back$/);
    expect(words['plumbing.main.checkValve']).toEqual(['no check valve']);
  });
});

test('a dry pool is empty and a stone without water dry', () => {
  const words = wordsAt(site('first-start'), 0);
  expect(words['watercourse[0]'][1]).toBe('empty');
  expect(words['watercourse[0].stones[0]'][1]).toBe('dry');
});

test('dots on water rise and fall with it', () => {
  const known = site('courtyard-no-check-valve');
  const request = wordsRequest(known, 984, 'metric');
  const { scene, scale } = request;
  const placed = wordsOfScene(request);
  const dotAt = (t: number): number => {
    const subject = subjectAt(known, t, 'metric');
    const x = placed.labels.find(({ id }) => id === 'filter')!.dot!.x;
    const marks = wordMarks(placed, scene, scale, subject, measureText);
    const dot = marks.find(
      (mark) => mark.kind === 'path' && mark.look === 'dot' && mark.d.startsWith(`M${px(x - 1.6)} `),
    );
    return Number(dot!.kind === 'path' ? dot!.d.match(/^M\S+ (\S+?)a/)![1] : Number.NaN);
  };
  for (const t of [0, 6 * 3600 + 600]) {
    expect(dotAt(t)).toBeCloseTo(scale.y(subjectAt(known, t, 'metric').moment.levels['filter']), 0);
  }
  expect(dotAt(6 * 3600 + 600) - dotAt(0)).toBeGreaterThan(20);
});

test('a long name is cut at a blank', () => {
  expect(shortName('the long flat stone under the maple')).toBe('the long flat stone…');
  expect(shortName('upper pool')).toBe('upper pool');
});

describe('words in a seat found for others', () => {
  const seated: Placed = {
    id: 'pump',
    seat: 'bottom rail',
    form: 'full',
    align: 'end',
    lines: [
      { text: 'pump', style: 'name', x: 0, y: 12 },
      { text: 'stands', style: 'figure', x: 0, y: 28 },
    ],
    box: { left: 0, top: 0, right: 40, bottom: 32 },
    leader: [],
    dot: undefined,
    ground: 'paper',
  };
  const say = (figure: string): Placed =>
    reworded(
      [seated],
      [
        {
          id: 'pump',
          lines: [
            { text: 'pump', style: 'name' },
            { text: figure, style: 'figure' },
          ],
        },
      ],
      measureText,
    )[0];

  test('stay flush with the same side', () => {
    const { lines } = say('222 W');
    for (const { x, text, style } of lines) expect(x + measureText(text, style)).toBeCloseTo(40, 9);
  });

  test('keep only the name where they have outgrown it', () => {
    expect(say('runs on a generator').lines.map(({ text }) => text)).toEqual(['pump']);
  });
});
