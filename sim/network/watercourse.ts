import { makeCrest } from '../laws/crest.ts';
import { makeStorage } from '../laws/storage.ts';
import { conveyance } from '../laws/stream.ts';
import type { Pool, Stream } from '../scenario/scenario.ts';
import type { Builder } from './builder.ts';
import { LEDGER } from './ledger.ts';
import { NONE } from './link.ts';

/** A pool or stream as a basin; what joins it to the next one comes later, when that one has its number. */
export function addReach(b: Builder, reach: Pool | Stream): number {
  if (reach.kind === 'pool') return b.fromParts(reach.name, reach, { cover: 0 });
  const area = reach.length * reach.width;
  const storage = makeStorage([[reach.foot, area]]);
  const i = b.basin(reach.name, storage, area, reach.slope * reach.length);
  b.surface(i, 0);
  if (reach.leak) b.leaks.push({ basin: i, ...reach.leak });
  return i;
}

/** The ways out of a pool or stream: stones or bed to the next basin down, seepage, and the edges that lose water. */
export function joinReach(b: Builder, reach: Pool | Stream, from: number, to: number): void {
  if (reach.kind === 'pool') joinPool(b, reach, from, to);
  else joinStream(b, reach, from, to);
}

function joinPool(b: Builder, pool: Pool, from: number, to: number): void {
  for (const stone of pool.stones) {
    const line = makeCrest(stone.crest, stone.cd, stone.along ?? 0, stone.nose);
    b.crest(stone.name, from, to, line, 1 - stone.blockage, NONE, stone.splash);
    if (stone.seep.k > 0) b.seeps.push({ link: b.link(`${stone.name} seep`, from, to), ...stone.seep });
  }
  b.lostOver(`${pool.name} rim`, from, pool.rim, LEDGER.edges);
}

function joinStream(b: Builder, stream: Stream, from: number, to: number): void {
  b.streams.push({
    link: b.link(stream.name, from, to),
    name: stream.name,
    conveyance: conveyance(stream.width, stream.slope, stream.manning),
    foot: stream.foot,
    open: 1 - stream.blockage,
  });
  if (!stream.edge) return;
  const z = stream.foot + stream.edge.height;
  const crest = [
    [0, z],
    [stream.edge.length, z],
  ] as const;
  b.lostOver(`${stream.name} edge`, from, { crest, cd: stream.edge.cd }, LEDGER.edges);
}
