import { volumeAt } from '../../laws/storage.ts';
import { type Display, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { floatLevel } from '../../trials/keptLevel.ts';
import { type Kept, keptSite, type PondRise, stopPump } from '../../trials/stop.ts';
import { lowestPoint } from '../../trials/trial.ts';
import { RunFailure } from '../failure.ts';
import { raise, rulerStep } from './variants.ts';

/** So far an edge is raised to learn how high the pond would rise within it, m. */
const OUT_OF_REACH = 1;
/** Tries to find how far a mark has to come down. */
const MOST_TRIES = 8;
/** Bores of overflow pipes to be had, m: metric, and in whole inches. */
const BORES: Record<Display, readonly number[]> = {
  metric: [0.05, 0.075, 0.1, 0.15],
  us: [2, 3, 4, 6].map((inches) => inches * 0.0254),
};
/** Height of an overflow's mouth above the kept level, m: out of reach of ripples. */
const MOUTH: Record<Display, number> = { metric: 0.01, us: 0.0254 * 0.375 };

/** A stop to be mended: how its pump is stopped, how it went, and the room it should leave below the edge, m. */
export interface Mending {
  readonly kept: Kept;
  readonly stop: (kept: Kept) => PondRise;
  readonly now: PondRise;
  readonly wanted: number;
}

/** What would leave the room wanted, each found by stopping the pump of the changed site again. */
export function drainBackMends(m: Mending): string[] {
  return [lowerMark(m), raiseEdge(m), addOverflow(m), addCheckValve(m)].filter((way) => way !== '');
}

/** A stop on a changed site; undefined where that site finds no balance, or starves its pump in it. */
function stopOn(s: Scenario, stop: Mending['stop']): PondRise | undefined {
  try {
    const kept = keptSite(s);
    if (kept === undefined) return undefined;
    const { basins, circuit } = kept.network.parts;
    const { storage } = basins[circuit.vault];
    if (kept.volumes[circuit.vault] < volumeAt(storage, s.pump.minimum)) return undefined;
    return stop(kept);
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

function lowerMark(m: Mending): string {
  const { scenario, network, level } = m.kept;
  const float = floatLevel(scenario, network);
  const step = rulerStep(scenario.display);
  const steps = stepsDown(m, step, float);
  if (steps === undefined) return '';
  const to = level - steps * step;
  const what = [scenario.pond.fillMark, float].map((z, i) => (z !== undefined && z > to ? ['mark', 'float'][i] : ''));
  const named = what.filter((name) => name !== '').join(' and the ');
  return `lower the ${named} ${formatLength(steps * step, scenario.display)}`;
}

/** Steps of the ruler by which the pond is to be kept lower: what is still missing is added, a few times at the most. */
function stepsDown({ kept, stop, wanted, now }: Mending, step: number, float: number | undefined): number | undefined {
  let missing = wanted - now.below;
  let steps = 0;
  for (let i = 0; i < MOST_TRIES && missing > 0; i++) {
    steps += Math.ceil(missing / step);
    const trial = stopOn(keptAt(kept.scenario, kept.level - steps * step, float), stop);
    if (trial === undefined) return undefined;
    missing = wanted - trial.below;
  }
  return missing > 0 ? undefined : steps;
}

/** The site kept at a lower level, m: the mark, and the float that shuts at pond level `float`, no lower than it takes. */
function keptAt(s: Scenario, level: number, float: number | undefined): Scenario {
  const { pond, autofill } = s;
  const by = Math.max(0, (float ?? level) - level);
  return {
    ...s,
    pond: { ...pond, fillMark: pond.fillMark === undefined ? undefined : Math.min(pond.fillMark, level) },
    autofill: autofill && { ...autofill, set: autofill.set - by, low: autofill.low - by },
  };
}

function raiseEdge({ kept, stop, wanted }: Mending): string {
  const { display } = kept.scenario;
  const raised = (by: number): Scenario => withEdgeRaised(kept.scenario, by);
  const within = stopOn(raised(OUT_OF_REACH), stop);
  if (within === undefined) return '';
  const step = rulerStep(display);
  const by = Math.ceil((wanted - (within.below - OUT_OF_REACH)) / step - 1e-9) * step;
  const trial = stopOn(raised(by), stop);
  return trial !== undefined && trial.below >= wanted - 1e-9 ? `raise the edge ${formatLength(by, display)}` : '';
}

function withEdgeRaised(s: Scenario, by: number): Scenario {
  return { ...s, pond: { ...s.pond, rim: raise(s.pond.rim, by) } };
}

function addOverflow({ kept, stop, wanted }: Mending): string {
  const { scenario, level } = kept;
  const { display, pond } = scenario;
  const elevation = level + MOUTH[display];
  if (pond.overflow !== undefined || elevation > lowestPoint(pond.rim.crest) - wanted) return '';
  for (const diameter of BORES[display]) {
    const trial = stopOn({ ...scenario, pond: { ...pond, overflow: { elevation, diameter } } }, stop);
    if (trial === undefined || trial.below < wanted) continue;
    return (
      `put in an overflow pipe ${formatLength(diameter, display)} wide with its mouth ` +
      `${formatLength(MOUTH[display], display)} above the level kept (${formatVolume(trial.overflow, display)} go ` +
      `down it at such a stop)`
    );
  }
  return '';
}

function addCheckValve({ kept, wanted }: Mending): string {
  const { scenario } = kept;
  const { kind } = scenario.plumbing.main.checkValve;
  if (kind === 'sound') return '';
  const sound = stopOn(scenario, (changed) => stopPump(changed, { check: { kind: 'sound' } }));
  if (sound === undefined || sound.below < wanted) return '';
  const how = kind === 'none' ? 'put in a' : kind === 'unknown' ? 'make sure of a' : 'see to a';
  return `${how} check valve that holds (the pond then stays ${formatLength(sound.below, scenario.display)} below its edge)`;
}
