/** Figures of the water in the filter at a moment, beside those of the case kept. */
import { type Display, formatDuration, formatFine, formatPercent } from '../../sim/quantity/index.ts';
import type { Seen } from './explanation.ts';
import { type Passage, passageAt } from './passage.ts';

export interface FigureRow {
  readonly name: string;
  readonly now: string;
  /** '' where there is no case kept, or nothing like it in it. */
  readonly kept: string;
}

/** A layer is told of once so much of its pores is filled. */
const FILLED = 5e-3;
const NONE = 'none';

/** Rows of what goes which way, how long that takes, what it asks of head; none where nothing flows now. */
export function figureRows(seen: Seen, kept?: Seen): FigureRow[] {
  const now = passageOf(seen);
  if (!now) return [];
  const { display } = seen.scenario;
  const other = kept && passageOf(kept);
  const pair = (of: (passage: Passage) => string): Pick<FigureRow, 'now' | 'kept'> => ({
    now: of(now),
    kept: kept ? (other ? of(other) : NONE) : '',
  });
  return [
    ...ROWS.map(([name, of]) => ({ name, ...pair((passage) => of(passage, display)) })),
    { name: headName(now, other, display), ...pair(({ head }) => formatFine(head, display)) },
    ...filledNames(now, other).map((name) => ({
      name: `pores of ‘${name}’ filled`,
      ...pair(({ layers }) => filledWords(layers.find((layer) => layer.name === name)?.filled)),
    })),
  ];
}

/** undefined where nothing flows. */
function passageOf({ scenario, moment, porosities }: Seen): Passage | undefined {
  const passage = passageAt(scenario, moment, porosities);
  return passage?.share === undefined ? undefined : passage;
}

const timeWords = (seconds: number | undefined): string =>
  seconds === undefined ? 'none goes there' : formatDuration(seconds);

const ROWS: readonly (readonly [name: string, of: (passage: Passage, display: Display) => string])[] = [
  ['goes through the media', ({ share = 0 }) => formatPercent(1 - share)],
  ['goes round them', ({ share = 0 }) => formatPercent(share)],
  ['time among the media', ({ throughTime }) => timeWords(throughTime)],
  ['time in the gap', ({ roundTime }) => timeWords(roundTime)],
];

/** The head that lifts them is told once where it is one for both. */
function headName({ lift }: Passage, other: Passage | undefined, display: Display): string {
  const [words, kept] = [lift, other?.lift ?? lift].map((head) => formatFine(head, display));
  return words === kept ? `head lost; ${words} lifts them` : `head lost; ${words} lifts them, as kept ${kept}`;
}

/** Layers in which something has settled, in either case. */
function filledNames(now: Passage, other: Passage | undefined): string[] {
  const all = [...now.layers, ...(other?.layers ?? [])];
  return [...new Set(all.filter(({ filled }) => filled > FILLED).map(({ name }) => name))];
}

const filledWords = (filled: number | undefined): string =>
  filled === undefined ? NONE : filled > FILLED ? formatPercent(filled) : formatPercent(0);
