import { makeCrest } from '../laws/crest.ts';
import type { Filter } from '../scenario/scenario.ts';
import type { Builder } from './builder.ts';
import { LEDGER } from './ledger.ts';

/** The filter's vessel. */
export function addFilter(b: Builder, filter: Filter): number {
  return b.fromParts('filter', filter, { cover: 0 });
}

/** The filter's spillway lip down to the next basin, and the rim that loses what passes it. */
export function joinFilter(b: Builder, filter: Filter, from: number, to: number): void {
  b.crest('lip', from, to, makeCrest(filter.lip.crest, filter.lip.cd));
  b.lostOver('filter rim', from, filter.rim, LEDGER.filterRim);
}
