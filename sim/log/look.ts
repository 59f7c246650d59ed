import type { Where } from './said.ts';

/** Where to look first, as the rest of a sentence. */
export function lookWords(where: Where, isHole: boolean): string {
  const pond = isHole
    ? 'look at the pond’s liner, at the height where it stops.'
    : 'look at the pond itself: liner, folds, the intake’s and pipes’ passages.';
  if (where === 'falls')
    return 'look at the falls and the stream first: splash, low edges, stones that seep, the pipe.';
  if (where === 'both') return `${pond.replace(/\.$/, '')}, then at the falls and the stream.`;
  return pond;
}
