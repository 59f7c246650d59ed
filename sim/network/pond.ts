import type { Pond } from '../scenario/scenario.ts';
import type { Builder } from './builder.ts';
import { LEDGER } from './ledger.ts';

/** The pond with its liner edge, over which water is lost. */
export function addPond(b: Builder, pond: Pond): number {
  const i = b.fromParts('pond', pond, { cover: pond.plantCover });
  b.lostOver('rim', i, pond.rim, LEDGER.rim);
  return i;
}
