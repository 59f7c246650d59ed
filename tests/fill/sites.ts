import { type FillOptions, type FillPlan, fillPlan } from '../../sim/fill/plan.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

// biome-ignore lint/suspicious/noExplicitAny: tests change it in every way
type File = any;

export const FLOW = 20e-3 / 60;

/** Floor and mark of the upright pond, m; its area and the vault's, m². */
export const FLOOR = -0.8;
export const MARK = -0.1;
export const AREA = 12;
/** The vault stands beside the pond, its floor at the pond's and its lip too, so that both fill as one. */
export const VAULT = 0.5;

/** An upright pond of 12 m² from −0.8 m up, to be filled to −0.1 m with 20 L/min from 18:00 on a Sunday; nothing is lost. */
export const pondFile = (): File => ({
  title: 'Fill',
  starts: '2031-06-01T18:00',
  span: '3 d',
  pond: {
    profile: [
      [FLOOR, AREA],
      [0.1, AREA],
    ],
    level: 'empty',
    fillMark: MARK,
    rim: {
      crest: [
        [0, 0],
        [1, 0],
      ],
    },
  },
  intake: { width: 1, elevation: FLOOR },
  vault: {
    profile: [
      [FLOOR, VAULT],
      [0.1, VAULT],
    ],
  },
  pump: { curve: { flow: 0.003, head: 3 }, suction: -0.75, minimum: -0.6, running: false },
  plumbing: {
    main: { diameter: 0.05, length: 4 },
    tee: 0.3,
    bottomFeed: { diameter: 0.05, length: 1, inlet: 0.3 },
  },
  supply: { hose: { flow: '20 L/min' } },
});

export function siteOf(change: (file: File) => void = () => {}): Scenario {
  const file = pondFile();
  change(file);
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

export function planOf(change?: (file: File) => void, options?: FillOptions): FillPlan {
  const plan = fillPlan(siteOf(change), options);
  if (plan === undefined) throw new Error('no plan');
  return plan;
}

/** When it is full, s; NaN where it never is. */
export const fullAt = (plan: FillPlan): number => plan.full?.t ?? Number.NaN;
