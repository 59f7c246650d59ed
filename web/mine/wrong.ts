/** What is wrong with a number of the sketch, in a builder's words and the page's units. */
import { type Display, parseQuantity } from '../../sim/quantity/index.ts';
import type { Problem } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { faultWords, quoted } from '../state/fault-words.ts';
import { typeset } from '../state/typed.ts';
import type { Figure, Row } from './rows.ts';
import { bandIn, setIn, siOf } from './units.ts';

const isAt = (place: string, { place: told }: Problem): boolean =>
  told === place || told.startsWith(`${place}.`) || told.startsWith(`${place}[`);

export const isWrong = (row: Row, figure: Figure, problems: readonly Problem[]): boolean =>
  problems.some((problem) => isAt(`${row.place}${figure.at}`, problem) || problem.place === row.place);

/** All that is wrong with a number, as sentences; '' where nothing is. */
export function wrongWords(row: Row, file: unknown, problems: readonly Problem[], display: Display): string {
  const own = problems.filter((problem) => isAt(row.place, problem));
  const sentences = own.map((problem) => {
    const figure = row.figures.find(({ at }) => isAt(`${row.place}${at}`, problem));
    return (figure && figureWords(row, figure, valueAt(file, problem.place), problem, display)) || plainWords(problem);
  });
  return [...new Set(sentences)].join(' ');
}

/** Problems that stand at no number of the sketch: of parts given beside it. */
export const elsewhere = (rows: readonly Row[], problems: readonly Problem[]): readonly Problem[] =>
  problems.filter((problem) => !rows.some((row) => isAt(row.place, problem)));

/** What can be said by the figure itself; undefined where the reader knows better. */
function figureWords(
  row: Row,
  figure: Figure,
  raw: unknown,
  { wanted }: Problem,
  display: Display,
): string | undefined {
  const { number } = row;
  const unit = figure.units[display];
  const like = `Type it like ${unit.like}.`;
  const called = figure.name === '' ? number.called : `${number.called}: ${figure.name}`;
  if (raw === undefined) return `Nobody can guess ${called}. ${like}`;
  const unread = typeof raw === 'string' ? unreadWords(raw, figure, like) : '';
  if (unread !== '') return unread;
  const value = siOf(raw, figure.dimension);
  if (value === undefined || !Number.isFinite(value)) return `That is no figure. ${like}`;
  const range = figure.at === '' ? number.range : undefined;
  if (range) {
    const nearest = setIn(unit, figure.dimension, value < range[0] ? range[0] : range[1]);
    const lead = value < range[0] && value <= 0 ? nothingWords(value) : '';
    if (value < range[0] || value > range[1])
      return `${lead}${capital(called)} makes sense from ${bandIn(unit, figure.dimension, range)}; the nearest is ${nearest}.`;
  }
  // What the reader takes of any such figure; how it suits the rest of the site stands in a sentence of its own.
  if (!wanted.includes('a number')) return undefined;
  return value <= 0 ? `${nothingWords(value)}${like}` : `${quoted(raw)} is beyond any site. ${like}`;
}

const nothingWords = (value: number): string => `${value < 0 ? 'Less than zero' : 'Zero'} can’t be built. `;

function unreadWords(text: string, { dimension, units }: Figure, like: string): string {
  if (units.us.name === '') return Number.isFinite(Number(text)) ? '' : `${quoted(text)} is no plain number. ${like}`;
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? '' : faultWords(text, parsed, dimension, like);
}

/** As the reader has it, without the place in the whole file and the list of units. */
function plainWords({ found, wanted }: Problem): string {
  const [short = wanted] = wanted.split(': a number');
  const bare = found.replace(/ at [\w.[\]]+$/, '');
  if (bare === 'nothing') return `It takes ${short}.`;
  return typeset(`${capital(bare)}: it takes ${short}.`);
}

export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
