import { findBalance } from '../balance.ts';
import { assemble } from '../network/assemble.ts';
import { dryVolumes } from '../network/start.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { risingRoot } from './root.ts';

/** The level is found to this, m. */
const NARROW = 1e-6;

const total = (volumes: Float64Array): number => volumes.reduce((sum, v) => sum + v, 0);

/**
 * How far a pond falls from its fill mark once a dry water course has filled and all is at rest, m: no water is made or
 * lost, so the running balance at the lower level holds what pond and vault held at the mark.
 *
 * The trial of a first start answers the same to some tenths of a millimeter where nothing is lost on the way and the
 * pump does not draw air; this costs a few balances in place of a march.
 * @throws RunFailure where no running balance is found with the pond at its mark
 */
export function settledFall(s: Scenario): number {
  const mark = s.pond.fillMark ?? 0;
  const network = assemble(s);
  const before = total(dryVolumes(network, mark));
  const [floor] = s.pond.profile[0];
  const [, widest] = s.pond.profile[s.pond.profile.length - 1];
  const excess = (z: number): number => {
    try {
      return total(findBalance(s, network, z).volumes) - before;
    } catch (error) {
      // So low that the starving pump finds no balance: a pond at rest stands higher.
      if (error instanceof RunFailure && z < mark) return -before;
      throw error;
    }
  };
  // The pond is nowhere wider than at its top, so it falls at least this far; twice that mostly brackets it.
  const least = Math.max(0, excess(mark)) / widest;
  let high = mark - least;
  let low = Math.max(floor, mark - 2 * least);
  while (low > floor && excess(low) > 0) {
    high = low;
    low = Math.max(floor, 2 * low - mark);
  }
  return mark - risingRoot(excess, low, high, NARROW);
}
