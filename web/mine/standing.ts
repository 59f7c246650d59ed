/** How each number of the sketch stands: typed, assumed, or resting on nothing. */
import { type Display, parseQuantity } from '../../sim/quantity/index.ts';
import type { Assumption, Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { typeset } from '../state/typed.ts';
import { EXAMPLE_TEXTS } from './new-sketch.ts';
import type { Figure, Row } from './rows.ts';
import { bandIn, setIn, shownIn, siOf } from './units.ts';

export interface Sketching {
  readonly file: unknown;
  /** The site as it last answered. */
  readonly scenario: Scenario | undefined;
  readonly display: Display;
  /** Places typed on this page. */
  readonly typed: ReadonlySet<string>;
}

/** `unused`: nothing of this site rests on it. `example`: an invented figure that nobody has replaced yet. */
export type Standing = 'given' | 'example' | 'assumed' | 'needed' | 'unused';

export function assumptionAt({ scenario }: Sketching, place: string): Assumption | undefined {
  return scenario?.assumed.find((each) => each.place === place);
}

export function standingOf(site: Sketching, row: Row): Standing {
  const raw = valueAt(site.file, row.place);
  const places = row.figures.map(({ at }) => `${row.place}${at}`);
  if (raw !== undefined && raw !== 'unknown')
    return places.some((place) => isExample(site, place)) ? 'example' : 'given';
  if (!row.number.fallback) return 'needed';
  if (assumptionAt(site, row.place)) return 'assumed';
  // The last good answer may be of a file in which it was still typed.
  const settled = site.scenario?.sketched && valueAt(site.scenario.sketched, row.place) === undefined;
  return settled ? 'unused' : 'assumed';
}

export const isExample = ({ file, typed }: Sketching, place: string): boolean =>
  !typed.has(place) && (EXAMPLE_TEXTS.get(place)?.includes(String(valueAt(file, place))) ?? false);

/** A figure's SI value: as typed, else as assumed; undefined where neither can be read. */
export function figureValue(site: Sketching, row: Row, figure: Figure): number | undefined {
  const raw = rawOf(site, row, figure);
  return raw === undefined ? assumedFigure(site, row, figure) : siOf(raw, figure.dimension);
}

/** What a figure's field shows. */
export function figureText(site: Sketching, row: Row, figure: Figure): string {
  const { display, typed } = site;
  const unit = figure.units[display];
  const raw = rawOf(site, row, figure);
  if (raw !== undefined) return shownIn(unit, figure.dimension, raw, display, typed.has(`${row.place}${figure.at}`));
  const value = assumedFigure(site, row, figure);
  return value === undefined ? '' : setIn(unit, figure.dimension, value);
}

function rawOf({ file, display }: Sketching, row: Row, figure: Figure): unknown {
  const raw = valueAt(file, row.place);
  if (row.number.key === 'shelf' && Array.isArray(raw)) return valueAt(raw[0], figure.at.slice(1));
  const flow = row.number.key === 'bucket' && !Array.isArray(raw) ? siOf(raw, 'flow') : undefined;
  return flow === undefined ? valueAt(file, `${row.place}${figure.at}`) : bucketOf(flow, display)[figure.at];
}

function assumedFigure(site: Sketching, row: Row, { at }: Figure): number | undefined {
  const value = assumptionAt(site, row.place)?.value;
  if (row.number.key === 'bucket' && typeof value === 'number') return bucketOf(value, site.display)[at];
  if (typeof value === 'number') return value;
  if (row.number.key !== 'shelf' || typeof value !== 'string') return undefined;
  // '12 in down, 18 in wide'
  const text = new RegExp(`([^,]+) ${at === '.depth' ? 'down' : 'wide'}`).exec(value)?.[1];
  const parsed = text === undefined ? undefined : parseQuantity(text, 'length');
  return parsed?.ok ? parsed.value : undefined;
}

/** A flow as a full bucket and the seconds it takes. */
function bucketOf(flow: number, display: Display): Record<string, number> {
  const volume = display === 'us' ? 5 * 3.785411784e-3 : 0.01;
  return { '[0]': volume, '[1]': volume / flow };
}

/** The word in force, typed or assumed. */
export function wordOf(site: Sketching, row: Row): string | undefined {
  const raw = valueAt(site.file, row.place) ?? assumptionAt(site, row.place)?.value;
  return typeof raw === 'string' ? raw : undefined;
}

/** '24 to 36 in'; '' where no band is stated. */
export function bandWords(site: Sketching, row: Row): string {
  const band = assumptionAt(site, row.place)?.band;
  const units = row.bandUnits ?? row.figures[0]?.units;
  const dimension = row.number.dimension;
  return band && units && dimension ? bandIn(units[site.display], dimension, band) : '';
}

/** An assumed value in words: '30 in', 'freeform', '5 gal filled in 33 s'. */
export function valueWords(site: Sketching, row: Row): string {
  const word = wordOf(site, row);
  const spoken = row.words.find(([each]) => each === word)?.[1];
  if (spoken !== undefined) return typeset(spoken);
  if (row.number.key === 'shelf' && word === 'none') return 'none';
  const figures = row.figures.map((figure) => [figureText(site, row, figure), figure.name] as const);
  if (row.number.key === 'bucket') return figures.map(([text]) => text).join(' in ');
  return figures.map(([text, name]) => (name ? `${text} ${name}` : text)).join(', ') || (word ?? '');
}
