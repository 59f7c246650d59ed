import seedrandom from 'seedrandom';

/** Next figure of a stream, evenly spread over [0, 1). */
export type Random = () => number;

/**
 * A stream of figures that depends on its seed and name alone: the same on every machine, and untouched by how many
 * figures other streams have drawn. No stream is shared and the engine's own Math.random is left as it is.
 *
 * Not for secrets: the generator is ARC4 by David Bau's seedrandom library.
 */
export function randomStream(seed: string, name = ''): Random {
  const generator = seedrandom(name === '' ? seed : `${seed}\u0000${name}`);
  return () => generator();
}
