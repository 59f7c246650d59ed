import { describe, expect, test } from 'vitest';
import { restoreNetwork } from '../../sim/results/inside.ts';
import { levelEvents, liftEvents } from '../../sim/results/levelEvents.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import {
  FEED,
  MAIN,
  marched,
  RUNNING,
  runningSite,
  smallSite,
  stone,
  upright,
  uprightPool,
} from '../network/smallSite.ts';

function logged(site: Scenario): string[] {
  const { record } = marched(site).march;
  return levelEvents(site, record).map(({ t, what }) => `${Math.round(t)} ${what}`);
}

/**
 * 10 m² of pond at −0.4 m that a hose fills by a tenth of a millimeter a second, its edge and its mark near. The vault
 * beside it is a pipe that holds next to nothing.
 */
const filling = (actions: object[], pond: object): Scenario =>
  smallSite({
    pond: { ...upright(10, -1, -0.4), ...pond },
    vault: {
      profile: [
        [-1.2, 1e-3],
        [0.2, 1e-3],
      ],
    },
    intake: { width: 0.5, elevation: -0.45 },
    supply: { hose: { flow: 1e-3, on: true } },
    actions,
  });
const edge = (z: number) => ({
  rim: {
    crest: [
      [0, z + 0.01],
      [0.5, z],
      [1, z + 0.01],
    ],
  },
});
const hose = (at: number, to: string) => ({ at, do: 'hose', to });
const out = (at: number, until: number, flow = 2e-3) => ({ at, do: 'pump out', flow, until });

describe('a level that is reached', () => {
  test('is told at its moment: the pond at its lowest edge, and below it when it is a tenth of a millimeter down', () => {
    const pond = { ...edge(-0.37), fillMark: -0.371 };
    // An edge so narrow that next to nothing passes it in the second it stands under water.
    const site = filling([hose(301, 'off'), out(301, -0.39)], pond);
    const rest = logged(site);
    expect(rest).toContain('290 pond at fill mark');
    expect(rest).toContain('300 pond at rim');
    const below = Number(rest.find((line) => line.endsWith('below rim'))?.split(' ')[0]);
    expect(below).toBeCloseTo(301 + 1, 1);
    expect(rest.length).toBe(3);
  });

  test('is told once while it only trembles about its mark, again when it has clearly gone and come back', () => {
    const times = (actions: object[]): number =>
      logged(filling(actions, { fillMark: -0.37, ...edge(0) })).filter((line) => line.endsWith('fill mark')).length;
    const trembling = [hose(300.5, 'off'), out(301, -0.37004), hose(302, 'on'), hose(303, 'off'), out(304, -0.37004)];
    expect(times(trembling)).toBe(1);
    expect(times([...trembling, out(310, -0.3702), hose(320, 'on')])).toBe(2);
  });

  test('names the pool or stream that is overtopped, and the filter', () => {
    const site = runningSite({
      start: 'standing',
      filter: {
        profile: [
          [0.7, 0.5],
          [2, 0.5],
        ],
        lip: {
          crest: [
            [0, 1.6],
            [0.05, 1.6],
          ],
        },
        rim: {
          crest: [
            [0, 1.65],
            [2, 1.65],
          ],
        },
      },
      watercourse: [
        uprightPool('spring', 1, 0.7, undefined, {
          stones: [stone('weir', 0.02, 1.5)],
          rim: {
            crest: [
              [0, 1.55],
              [1, 1.55],
            ],
          },
        }),
        {
          name: 'run',
          kind: 'stream',
          length: 3,
          width: 0.02,
          slope: 0.03,
          foot: 0.3,
          edge: { height: 0.03, length: 1 },
        },
      ],
      span: '10 min',
    });
    const what = logged(site).map((line) => line.replace(/^\S+ /, ''));
    expect(what).toEqual(expect.arrayContaining(['filter overtopped', 'spring overtopped', 'run overtopped']));
  });

  test('tells a vault that is drawn down to the pump’s minimum, at the moment it is', () => {
    const site = runningSite({
      intake: { width: 0.3, elevation: -0.26, blockage: 1 },
      start: 'standing',
      span: '10 min',
    });
    const run = marched(site);
    const [minimum] = levelEvents(site, run.march.record).filter((e) => e.what === 'vault at minimum');
    expect(run.levelAt('vault', minimum.t)).toBeCloseTo(-0.9, 9);
    expect(minimum.t).toBeGreaterThan(60);
  });
});

describe('media', () => {
  /** Fine fiber that a fast pump lifts, a slow one does not. */
  const fine = (actions: object[]): Scenario =>
    runningSite({
      start: 'standing',
      span: '20 min',
      actions,
      filter: {
        profile: [
          [0.7, 0.5],
          [2, 0.5],
        ],
        media: {
          bottom: 0.9,
          area: 0.42,
          perimeter: 2.6,
          layers: [{ name: 'fine mat', thickness: 0.2, porosity: 0.9, grain: 1e-4 }],
          submergedWeight: 20,
        },
        lip: {
          crest: [
            [0, 1.6],
            [0.6, 1.6],
          ],
        },
        rim: {
          crest: [
            [0, 1.9],
            [2, 1.9],
          ],
        },
      },
      plumbing: { main: MAIN, tee: 0.8, bottomFeed: { ...FEED, inlet: 0.75 } },
      pump: { ...(RUNNING['pump'] as object), running: false },
    });

  test('lift when the head across them passes their weight in water, told within the step', () => {
    const run = marched(
      fine([
        { at: 100, do: 'pump', to: 'on' },
        { at: 400, do: 'pump', to: 0.4 },
        { at: 700, do: 'pump', to: 'on' },
      ]),
    );
    const { record } = run.march;
    const { liftHead } = record.network.parts.circuit.feeds;
    // 20 N over 0.42 m² of water at 15 °C.
    expect(liftHead).toBeCloseTo(20 / (999.1 * 9.80665 * 0.42), 5);
    const events = liftEvents(record, liftHead);
    expect(events.map((e) => e.what)).toEqual(['media lifts', 'media lifts']);
    const volumes = new Float64Array(record.network.size);
    for (const { t } of events) {
      restoreNetwork(record, t, volumes);
      expect(record.network.mediaHead).toBeCloseTo(liftHead, 6);
    }
    expect(events[0].t).toBeGreaterThan(100);
    expect(events[1].t).toBeGreaterThan(700);
  });

  test('lift at the action that carries them over, where no root lies inside a step', () => {
    const run = marched(
      fine([
        { at: 0, do: 'bottom valve', to: 0.05 },
        { at: 0, do: 'pump', to: 'on' },
        { at: 300, do: 'bottom valve', to: 1 },
      ]),
    );
    const { record } = run.march;
    const { liftHead } = record.network.parts.circuit.feeds;
    expect(liftEvents(record, liftHead).map(({ t, what }) => `${t} ${what}`)).toEqual(['300 media lifts']);
  });
});
