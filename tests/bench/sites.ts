import { readFileSync } from 'node:fs';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

function read(text: string): Scenario {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.scenario;
}

/** The worked site over 48 hours with one stop, or over a year with a daily timetable. */
export function worked(name: 'terrace-48h' | 'terrace-365d'): Scenario {
  return read(readFileSync(new URL(`../results/${name}.json`, import.meta.url), 'utf8'));
}

/** A chain of equal pools down a slope, on a pond large enough to start them all: 48 hours with one stop. */
export function chain(pools: number): Scenario {
  const pondArea = 20 + 2 * pools;
  const top = 0.3 * pools;
  const lip = top + 0.6;
  return read(
    JSON.stringify({
      title: `chain of ${pools} pools`,
      span: '48 h',
      start: 'standing',
      pond: {
        profile: [
          [-1, 0.5 * pondArea],
          [0.05, pondArea],
        ],
        level: -0.1,
        rim: {
          crest: [
            [0, 0],
            [2, 0],
          ],
        },
      },
      intake: { width: 0.6, elevation: -0.4 },
      vault: {
        profile: [
          [-1.2, 0.5],
          [0.05, 0.5],
        ],
      },
      pump: {
        curve: [
          [0, lip + 4],
          [0.004, lip + 3],
          [0.008, lip + 1],
        ],
        power: 400,
        suction: -1.1,
        minimum: -0.9,
      },
      plumbing: {
        main: { diameter: 0.078, length: 10 + pools, fittings: { elbow90: 3 } },
        tee: lip - 0.6,
        bottomFeed: { diameter: 0.052, length: 2, inlet: lip - 0.6 },
        topFeed: { diameter: 0.052, length: 2, outlet: lip + 0.1, valve: 0.5 },
      },
      filter: {
        profile: [
          [lip - 0.65, 0.5],
          [lip + 0.15, 0.5],
        ],
        lip: {
          crest: [
            [0, lip],
            [0.6, lip],
          ],
        },
        rim: {
          crest: [
            [0, lip + 0.12],
            [2, lip + 0.12],
          ],
        },
      },
      watercourse: Array.from({ length: pools }, (_, i) => {
        const stone = 0.3 * (pools - i);
        return {
          name: `pool ${i + 1}`,
          kind: 'pool',
          profile: [
            [stone - 0.25, 0.8],
            [stone + 0.15, 1.6],
          ],
          stones: [
            {
              name: `stone ${i + 1}`,
              crest: [
                [0, stone],
                [0.7, stone],
              ],
            },
          ],
          rim: {
            crest: [
              [0, stone + 0.12],
              [1, stone + 0.12],
            ],
          },
        };
      }),
      weather: { evaporation: '6 mm/d' },
      actions: [
        { at: '24 h', do: 'pump', to: 'off' },
        { at: '30 h', do: 'pump', to: 'on' },
      ],
    }),
  );
}
