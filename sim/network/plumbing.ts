import { fittingsLoss } from '../laws/fittings.ts';
import { makePipe, type Pipe } from '../laws/pipe.ts';
import { curveFromBox, curveFromPoints, type PowerCurve, type PumpCurve, standingLoss } from '../laws/pump.ts';
import { makeStorage, type Storage } from '../laws/storage.ts';
import { ballValveLoss, cockLoss } from '../laws/valve.ts';
import { density, kinematicViscosity } from '../laws/water.ts';
import type { Feed, PipeRun, Plumbing, Pump, Scenario } from '../scenario/scenario.ts';
import { MainLineFlow } from './mainLine.ts';

/** Above its top a full pipe holds no more water: the standpipe goes on with this share of its area. */
const NARROW = 0.05;

/** Elevation up to which the pipework fills: the greater of tee and top outlet (without a top feed, bottom inlet). */
export function topOfPipework(p: Plumbing): number {
  return Math.max(p.tee, p.topFeed ? p.topFeed.outlet : (p.bottomFeed as { inlet: number }).inlet);
}

/** What a pipe between two elevations holds, m³: it is no shorter than it rises. */
function volumeOf(run: PipeRun | undefined, from: number, to: number): number {
  return run ? (Math.PI / 4) * run.diameter ** 2 * Math.max(run.length, Math.abs(to - from)) : 0;
}

/** The water standing in main and feeds as an open standpipe from the pump's suction up. */
export function riserStorage(p: Plumbing, suction: number): Storage {
  if (p.profile) {
    const [z, area] = p.profile[p.profile.length - 1];
    return makeStorage([...p.profile, [z, NARROW * area]]);
  }
  const top = topOfPipework(p);
  const { main, tee, bottomFeed, topFeed } = p;
  const volume =
    volumeOf(main, suction, tee) +
    volumeOf(bottomFeed, tee, bottomFeed?.inlet ?? tee) +
    volumeOf(topFeed, tee, topFeed?.outlet ?? tee);
  const area = volume / (top - suction);
  return makeStorage([
    [suction, area],
    [top, area],
    [top, NARROW * area],
  ]);
}

function pipeOf(run: PipeRun, celsius: number): Pipe {
  const k = run.k + fittingsLoss(run.fittings, run.diameter);
  return makePipe(run.diameter, run.length, run.roughness, k, kinematicViscosity(celsius));
}

/** A feed's pipe and how its valve is turned: the valve's K stands beside the fittings', on the feed's own velocity. */
export function feedPipe(feed: Feed, celsius: number): { pipe: Pipe; turn: (opening: number) => void } {
  const pipe = pipeOf(feed, celsius);
  const fixed = pipe.k;
  const law = feed.law === 'cock' ? cockLoss : ballValveLoss;
  const turn = (opening: number): void => {
    pipe.k = fixed + law(opening);
  };
  turn(feed.valve);
  return { pipe, turn };
}

export function pumpCurve(pump: Pump): PumpCurve {
  const { curve } = pump;
  return curve.kind === 'box' ? curveFromBox(curve.flow, curve.head) : curveFromPoints(curve.points);
}

function powerCurve(power: Pump['power']): PowerCurve | undefined {
  switch (power?.kind) {
    case undefined:
      return undefined;
    case 'constant':
      return { flow: Float64Array.of(0), watts: Float64Array.of(power.watts), efficiency: 0 };
    case 'points': {
      const flow = Float64Array.from(power.points, ([q]) => q);
      return { flow, watts: Float64Array.from(power.points, ([, w]) => w), efficiency: 0 };
    }
    case 'efficiency':
      return { flow: new Float64Array(0), watts: new Float64Array(0), efficiency: power.efficiency };
  }
}

/** Pump, check valve and main line of a site. */
export function mainLineOf(s: Scenario): MainLineFlow {
  const { pump } = s;
  const curve = pumpCurve(pump);
  const pipe = pipeOf(s.plumbing.main, s.water.temperature);
  return new MainLineFlow(
    pipe,
    curve,
    pump.standingLoss ?? standingLoss(curve, pipe.area),
    pump.suction,
    pump.minimum,
    powerCurve(pump.power),
    density(s.water.temperature),
  );
}
