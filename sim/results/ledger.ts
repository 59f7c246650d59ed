import { FIRST_OUT, LEDGER } from '../network/ledger.ts';
import type { Ledger } from './answer.ts';
import type { RunRecord } from './record.ts';

/** Water in all basins in a row of a record, m³. */
export function storedAt(record: RunRecord, row: number): number {
  let sum = 0;
  for (let i = 0; i < record.network.size; i++) sum += record.volume(row, i);
  return sum;
}

/**
 * What is left unexplained at a row: |Δstored + out − in| over the greatest of in, out, pumped and stored at the start.
 */
export function closureAt(record: RunRecord, row: number): number {
  let inward = 0;
  let outward = 0;
  for (let e = 0; e < FIRST_OUT; e++) inward += record.ledger(row, e);
  for (let e: number = FIRST_OUT; e < LEDGER.pumped; e++) outward += record.ledger(row, e);
  const start = storedAt(record, 0);
  const rest = Math.abs(storedAt(record, row) - start + outward - inward);
  const scale = Math.max(inward, outward, record.ledger(row, LEDGER.pumped), start);
  return scale > 0 ? rest / scale : 0;
}

/** The ledger of a whole record. */
export function ledgerOf(record: RunRecord): Ledger {
  const last = record.length - 1;
  const at = (name: keyof typeof LEDGER): number => record.ledger(last, LEDGER[name]);
  return {
    in: { hose: at('hose'), rain: at('rain'), runoff: at('runoff'), autofill: at('autofill') },
    out: {
      evaporation: at('evaporation'),
      splash: at('splash'),
      rim: at('rim'),
      overflow: at('overflow'),
      filterRim: at('filterRim'),
      edges: at('edges'),
      leak: at('leak'),
      pumpedOut: at('pumpedOut'),
    },
    stored: { start: storedAt(record, 0), end: storedAt(record, last) },
    pumped: at('pumped'),
    closure: closureAt(record, last),
  };
}
