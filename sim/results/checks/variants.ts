import { type Balance, balanceOrFailure } from '../../balance.ts';
import type { Crest, Scenario, Stone } from '../../scenario/scenario.ts';
import { RunFailure } from '../failure.ts';

/** The running balance of a site, or of one with a change made on it; undefined where it finds none. */
export function balanceOf(s: Scenario): Balance | undefined {
  const found = balanceOrFailure(s);
  return found instanceof RunFailure ? undefined : found;
}

/**
 * The least whole number of steps, 1 to `most`, from which on something holds; undefined where it never does. By
 * bisection: what holds once must hold beyond. A mend found so is a round figure that has been computed to do.
 */
export function leastSteps(holds: (steps: number) => boolean, most: number): number | undefined {
  if (!holds(most)) return undefined;
  let low = 0;
  let high = most;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (holds(mid)) high = mid;
    else low = mid;
  }
  return high;
}

/** Step by which a stone or an edge is raised or lowered, m: a millimeter, an eighth of an inch. */
export function rulerStep(display: Scenario['display']): number {
  return display === 'us' ? 0.0254 / 8 : 0.001;
}

export function lowestOf(crest: Crest['crest']): number {
  return Math.min(...crest.map(([, z]) => z));
}

/** A crest moved up (down where negative) by a height, m. */
export function raise<C extends Crest>(crest: C, by: number): C {
  return { ...crest, crest: crest.crest.map(([station, z]) => [station, z + by] as const) };
}

/** The site with one of its stones changed. */
export function withStone(s: Scenario, name: string, change: (stone: Stone) => Stone): Scenario {
  return {
    ...s,
    watercourse: s.watercourse.map((reach) =>
      reach.kind === 'pool'
        ? { ...reach, stones: reach.stones.map((stone) => (stone.name === name ? change(stone) : stone)) }
        : reach,
    ),
  };
}

/** The site with its pump driven at a speed, of the full speed that its curve is for. */
export function withSpeed(s: Scenario, speed: number): Scenario {
  return { ...s, pump: { ...s.pump, speed } };
}

/** Flow to which the pump is to be brought down for something to hold in the balance, m³/s, by whole percents of speed. */
export function flowThat(s: Scenario, holds: (changed: Scenario, balance: Balance) => boolean): number | undefined {
  const at = (steps: number): [Scenario, Balance | undefined] => {
    const changed = withSpeed(s, (1 - steps / 100) * s.pump.speed);
    return [changed, balanceOf(changed)];
  };
  const steps = leastSteps((n) => {
    const [changed, balance] = at(n);
    return balance !== undefined && holds(changed, balance);
  }, 90);
  return steps === undefined ? undefined : at(steps)[1]?.answer.duty.flow;
}
