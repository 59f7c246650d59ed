import { readFileSync } from 'node:fs';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** The checked site of a file's content; problems are errors of the test. */
export function siteOf(file: unknown): Scenario {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

export function terrace(): Scenario {
  return siteOf(JSON.parse(readFileSync(new URL('../results/terrace-48h.json', import.meta.url), 'utf8')));
}

export const POND = 9;
export const VAULT = 0.5;
export const FILTER = 1;
export const POOL = 2;
export const LIP = 0.6;
export const STONE = 0.5;

/** Vertical walls everywhere, one stone, no stream, no media: what comes back can be reckoned by hand. */
// biome-ignore lint/suspicious/noExplicitAny: tests change it in every way
export const plainFile = (): any => ({
  title: 'Plain',
  span: '1 h',
  pond: {
    profile: [
      [-0.8, POND],
      [0.2, POND],
    ],
    fillMark: -0.1,
    rim: {
      crest: [
        [0, 0],
        [1, 0],
      ],
    },
  },
  intake: { width: 0.6, elevation: -0.4 },
  vault: {
    profile: [
      [-1, VAULT],
      [0.2, VAULT],
    ],
  },
  pump: {
    curve: [
      [0, 5],
      [0.003, 4.5],
      [0.006, 2],
    ],
    suction: -0.95,
    minimum: -0.7,
    standingLoss: 10,
  },
  plumbing: {
    main: { diameter: 0.06, length: 8, roughness: 1e-5, k: 1, checkValve: true },
    tee: 0.3,
    bottomFeed: { diameter: 0.05, length: 1, roughness: 1e-5, k: 1, valve: 1, inlet: 0.35 },
  },
  filter: {
    profile: [
      [0.3, FILTER],
      [1.2, FILTER],
    ],
    lip: {
      crest: [
        [0, 1],
        [LIP, 1],
      ],
      cd: 1,
    },
    rim: {
      crest: [
        [0, 1.2],
        [1, 1.2],
      ],
    },
  },
  watercourse: [
    {
      name: 'pool',
      kind: 'pool',
      profile: [
        [0.3, POOL],
        [0.9, POOL],
      ],
      stones: [
        {
          name: 'stone',
          main: true,
          crest: [
            [0, 0.6],
            [STONE, 0.6],
          ],
          cd: 0.9,
        },
      ],
      rim: {
        crest: [
          [0, 0.85],
          [1, 0.85],
        ],
      },
    },
  ],
});

export const plainSite = (): Scenario => siteOf(plainFile());
