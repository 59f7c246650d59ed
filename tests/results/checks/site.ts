import type { Check } from '../../../sim/results/answer.ts';
import type { CheckInput } from '../../../sim/results/checks/check.ts';
import { balanceOf } from '../../../sim/results/checks/variants.ts';
import { readSite } from '../../../sim/scenario/read.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';

/**
 * A site of upright walls, so that volumes can be had by hand: pond 12 m², vault 0.5 m², filter 0.5 m², one pool of
 * 1 m² with a main stone and a higher one beside it.
 */
// biome-ignore lint/suspicious/noExplicitAny: tests change it in every way
export const upright = (): any => ({
  title: 'Upright walls',
  starts: '2031-06-01T06:00',
  span: '2 h',
  pond: {
    profile: [
      [-0.8, 12],
      [0, 12],
    ],
    level: -0.1,
    fillMark: -0.1,
    rim: {
      crest: [
        [0, 0],
        [2, 0],
      ],
    },
  },
  intake: { width: 0.6, elevation: -0.3 },
  vault: {
    profile: [
      [-1, 0.5],
      [0.05, 0.5],
    ],
  },
  pump: {
    curve: [
      [0, 5.2],
      [0.002, 4.9],
      [0.005, 3.7],
      [0.008, 1.6],
    ],
    power: 310,
    suction: -0.95,
    minimum: -0.75,
  },
  plumbing: {
    main: { diameter: 0.078, length: 9, fittings: { elbow90: 3 }, k: 2 },
    tee: 0.35,
    bottomFeed: { diameter: 0.063, length: 2, k: 1, inlet: 0.3 },
    topFeed: { diameter: 0.063, length: 2, k: 20, outlet: 1.1 },
  },
  filter: {
    profile: [
      [0.3, 0.5],
      [1.15, 0.5],
    ],
    media: {
      bottom: 0.45,
      area: 0.49,
      perimeter: 2.8,
      gap: 0.002,
      layers: [
        { name: 'mat', thickness: 0.1, porosity: 0.9, grain: 0.002 },
        { name: 'bags', thickness: 0.25, porosity: 0.8, grain: 0.008 },
      ],
      submergedWeight: 60,
    },
    lip: {
      crest: [
        [0, 1],
        [0.6, 1],
      ],
    },
    rim: {
      crest: [
        [0, 1.12],
        [2.6, 1.12],
      ],
    },
  },
  watercourse: [
    {
      name: 'pool',
      kind: 'pool',
      profile: [
        [0.3, 1],
        [0.8, 1],
      ],
      stones: [
        {
          name: 'broad stone',
          main: true,
          crest: [
            [0, 0.6],
            [0.9, 0.6],
          ],
          fall: 0.5,
        },
        {
          name: 'side stone',
          crest: [
            [0, 0.615],
            [0.5, 0.615],
          ],
          fall: 0.4,
        },
      ],
      rim: {
        crest: [
          [0, 0.75],
          [1, 0.75],
        ],
      },
    },
  ],
  supply: { hose: { flow: '20 L/min' } },
});

// biome-ignore lint/suspicious/noExplicitAny: a site's file
export function checked(file: any): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** The upright site after a change, checked. */
// biome-ignore lint/suspicious/noExplicitAny: a site's file
export function siteWith(change: (file: any) => void): Scenario {
  const file = upright();
  change(file);
  return checked(file);
}

export const inputOf = (scenario: Scenario): CheckInput => ({ scenario, balance: balanceOf(scenario) });

/** What a check answers; a check that asks nothing here is an error. */
export function answerOf(ask: (input: CheckInput) => Check | undefined, scenario: Scenario): Check {
  const check = ask(inputOf(scenario));
  if (!check) throw new Error('the check asks nothing');
  return check;
}

/** The figure before a unit in a sentence, after a word. */
export function figureAfter(text: string, words: string, unit: string): number {
  const found = new RegExp(`${words}[^0-9]*([0-9.]+) ${unit}`).exec(text);
  if (!found) throw new Error(`no figure in ${unit} after '${words}' in: ${text}`);
  return Number(found[1]);
}
