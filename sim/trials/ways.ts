import type { Scenario } from '../scenario/scenario.ts';
import { passedBy } from './passed.ts';
import type { PondRise } from './stop.ts';

/** By which ways water came back to pond and vault from a pump stop to the pond's highest level, m³. */
export interface Ways {
  /** Back through the main line into the vault. */
  readonly main: number;
  /** Of that: by the bottom feed out of the basin in which it ends, and siphoned through a drowned top outlet. */
  readonly bottomFeed: number;
  readonly topOutlet: number;
  /** Down the last part of the water course: over its stones (or the filter's lip), along its bed, beneath its stones. */
  readonly stones: number;
  readonly stream: number;
  readonly seepage: number;
  /** What the pump still lifted while it ran down: to be taken off the falls to have what came back. */
  readonly pumped: number;
}

/** Adds up the ways of a stop. */
export function waysOf(s: Scenario, trial: PondRise): Ways {
  const { flowNames } = trial.record.network.parts;
  const { forward, backward } = passedBy(trial.record, trial.highest.t);
  const sum = (volumes: Float64Array, names: readonly string[]): number =>
    names.reduce((all, name) => all + (flowNames.includes(name) ? volumes[flowNames.indexOf(name)] : 0), 0);
  const last = s.watercourse.at(-1);
  const stones = last?.kind === 'pool' ? last.stones.map((stone) => stone.name) : [];
  return {
    main: sum(backward, ['main']),
    bottomFeed: sum(backward, ['bottom feed']),
    topOutlet: sum(backward, ['top feed']),
    stones: sum(forward, last === undefined ? ['lip'] : stones),
    stream: last?.kind === 'stream' ? sum(forward, [last.name]) : 0,
    seepage: sum(
      forward,
      stones.map((name) => `${name} seep`),
    ),
    pumped: sum(forward, ['main']),
  };
}
