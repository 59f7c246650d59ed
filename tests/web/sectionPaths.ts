/** Reads the marks of a drawing back: the points their paths go through, for tests that measure what is drawn. */
import { balanceOrFailure } from '../../sim/balance.ts';
import { seriesOf, simulate } from '../../sim/index.ts';
import type { BalanceAnswer, RunAnswer, Series } from '../../sim/results/answer.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { type Flowing, flowingAt, flowScaleOf, type Ground, groundOf, layersOf } from '../../web/section/drawing.ts';
import { sceneOf } from '../../web/section/layout.ts';
import type { Mark } from '../../web/section/marks.ts';
import { type Scale, scaleOf } from '../../web/section/scale.ts';
import type { Scene } from '../../web/section/scene.ts';
import type { Moment } from '../../web/state/moment.ts';

/** Points a path goes through or is drawn toward, px; control points count, which hold the curve between them. */
export function pointsOf(d: string): [number, number][] {
  const points: [number, number][] = [];
  let x = 0;
  let y = 0;
  const go = (nx: number, ny: number): void => {
    points.push([nx, ny]);
    x = nx;
    y = ny;
  };
  for (const [, command, text] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const n = [...text.matchAll(/-?\d*\.?\d+(?:e-?\d+)?/g)].map(Number);
    const relative = command === command.toLowerCase();
    const [ox, oy] = relative ? [x, y] : [0, 0];
    switch (command.toUpperCase()) {
      case 'M':
      case 'L':
        go(ox + n[0], oy + n[1]);
        break;
      case 'H':
        go(ox + n[0], y);
        break;
      case 'V':
        go(x, oy + n[0]);
        break;
      case 'A':
        go(ox + n[5], oy + n[6]);
        break;
      case 'Q':
      case 'C':
        for (let i = 0; i + 3 < n.length; i += 2) points.push([ox + n[i], oy + n[i + 1]]);
        go(ox + n[n.length - 2], oy + n[n.length - 1]);
        break;
      case 'Z':
        break;
      default:
        throw new Error(`a path command unknown to the tests: ${command}`);
    }
  }
  return points;
}

export interface Drawn {
  readonly scenario: Scenario;
  readonly scene: Scene;
  readonly scale: Scale;
  readonly ground: Ground;
  readonly answer: RunAnswer;
  readonly series: Series;
  readonly balance: BalanceAnswer | undefined;
  readonly flowScale: number;
  readonly at: (moment: Moment) => Flowing;
}

export function scenarioOf(text: string): Scenario {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** Simulates a site and lays it out on a sheet of a width. */
export function drawn(scenario: Scenario, width: number): Drawn {
  const { answer, record } = simulate(scenario);
  const found = balanceOrFailure(scenario);
  const balance = found instanceof RunFailure ? undefined : found.answer;
  const scene = sceneOf(scenario);
  const scale = scaleOf(scene, width);
  const flowScale = flowScaleOf(scene, scale, answer, balance);
  const at = (moment: Moment): Flowing => flowingAt(scene, scale, moment, answer, flowScale);
  const series = seriesOf(record);
  return { scenario, scene, scale, ground: groundOf(scene, scale), answer, series, balance, flowScale, at };
}

export const marksOf = ({ ground }: Drawn, flowing: Flowing): Mark[] => layersOf(ground, flowing).flat();
