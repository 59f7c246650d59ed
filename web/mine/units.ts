/** Figures as the trade writes them beside a tape, a bucket and a box. */
import { type DimensionName, type Display, fromSI, parseQuantity, toSI, unitOf } from '../../sim/quantity/index.ts';
import { typedInUs } from '../../sim/sketch/shown.ts';
import { toFile, typeset } from '../state/typed.ts';
import { feetAndInches, plainFractions } from '../state/typed-inches.ts';

/** How one figure is written in a system: its unit, how far a press steps it, the figures after the point. */
export interface Unit {
  /** '' where it has none. */
  readonly name: string;
  /** In the unit. */
  readonly step: number;
  readonly decimals: number;
  readonly like: string;
}

export type Units = Readonly<Record<Display, Unit>>;

const unit = (name: string, step: number, decimals: number, like: string): Unit => ({ name, step, decimals, like });

/** A length walked off with a tape. */
export const FAR: Units = { us: unit('ft', 0.25, 0, '12 ft or 12\'6"'), metric: unit('m', 0.05, 2, '3.6 m') };
/** A length held against a rule. */
export const NEAR: Units = { us: unit('in', 1, 0, '30 in or 2 ft 6 in'), metric: unit('mm', 10, 0, '750 mm') };
/** A length of few inches. */
export const FINE: Units = { us: unit('in', 1 / 4, 0, '3 1/2 in'), metric: unit('mm', 5, 0, '90 mm') };
export const AREA: Units = { us: unit('ft2', 1, 1, '12 ft2'), metric: unit('m2', 0.1, 2, '1.2 m2') };
/** What a pump moves, as on its box. */
export const PUMPED: Units = { us: unit('gph', 100, 0, '3000 gph'), metric: unit('L/h', 500, 0, '11000 L/h') };
export const HEAD: Units = { us: unit('ft', 1, 1, '14 ft'), metric: unit('m', 0.2, 2, '4.2 m') };
/** What a tap gives. */
export const TAP: Units = { us: unit('gpm', 0.5, 1, '4 gpm'), metric: unit('L/min', 1, 1, '15 L/min') };
export const BUCKET: Units = { us: unit('gal', 1, 1, '5 gal'), metric: unit('L', 1, 1, '10 L') };
export const RAIN: Units = { us: unit('in/week', 0.1, 2, '1.2 in/week'), metric: unit('mm/d', 0.5, 1, '4.5 mm/d') };
const both = (each: Unit): Units => ({ us: each, metric: each });
export const SECONDS = both(unit('s', 1, 1, '33 s'));
export const COUNT = both(unit('', 1, 0, '4'));
export const PLAIN = both(unit('', 0.5, 2, '2.5'));
export const SHARE = both(unit('%', 5, 1, '80 %'));
export const SMALL_SHARE = both(unit('%', 0.01, 2, '0.01 %'));

/** Longer than this nothing is told by the inch or the millimeter, m. */
const RULE = { us: 1.5, metric: 2 };

/** A figure in SI as a text of a unit, '16 ft 6 in', '30 1/2 in', '3.4 m'; bare where the unit has no name. */
export function textIn({ name, decimals }: Unit, dimension: DimensionName, value: number): string {
  if (value === 0 && name !== '') return `0 ${name}`;
  if (name === 'in' || (name === 'ft' && decimals === 0))
    return feetAndInches(value, 8, name === 'in' && value < RULE.us);
  if (name === 'mm' && value >= RULE.metric) return textIn(FAR.metric, dimension, value);
  const known = unitOf(dimension, name);
  const count = Number((known ? fromSI(value, known) : value).toFixed(decimals)) + 0;
  return name === '' ? String(count) : `${count} ${name}`;
}

/** The same as the page sets it. */
export const setIn = (each: Unit, dimension: DimensionName, value: number): string =>
  typeset(textIn(each, dimension, value))
    .replace('ft2', 'ft²')
    .replace('m2', 'm²');

/** '24 to 36 in': the unit once where both ends share it. */
export function bandIn(each: Unit, dimension: DimensionName, [low, high]: readonly [number, number]): string {
  const [from, to] = [low, high].map((value) => setIn(each, dimension, value)) as [string, string];
  const tail = ` ${each.name.replace('2', '²')}`;
  const once = each.name !== '' && !/ft .*in/.test(from + to) && from.endsWith(tail) && to.endsWith(tail);
  return `${once ? from.slice(0, -tail.length) : from} to ${to}`;
}

/** What goes into the file for a typed text: a bare figure takes the unit. */
export const asValue = (text: string, { name }: Unit): unknown => toFile(text, name === '' ? '' : `1 ${name}`);

/** SI value of what the file holds; undefined where it can't be read. */
export function siOf(raw: unknown, dimension: DimensionName): number | undefined {
  if (typeof raw === 'number') return raw;
  const parsed = typeof raw === 'string' ? parseQuantity(raw, dimension) : undefined;
  return parsed?.ok ? parsed.value : undefined;
}

/**
 * What a field shows of the file's value: as it was typed, but for a figure of the other system that nobody typed here.
 *
 * @param typed the text was typed on this page and stays letter by letter
 */
export function shownIn(each: Unit, dimension: DimensionName, raw: unknown, display: Display, typed: boolean): string {
  const value = siOf(raw, dimension);
  if (typed || value === undefined) return typeof raw === 'string' ? raw : raw === undefined ? '' : String(raw);
  const ofOther = typeof raw === 'string' && each.name !== '' && each.name !== 's' && each.name !== '%';
  if (typeof raw === 'string' && !(ofOther && typedInUs(raw) !== (display === 'us'))) return typeset(raw);
  return setIn(each, dimension, value);
}

/** The file's text a number of steps on, within a range in SI; from the nearest whole step. */
export function stepped(
  each: Unit,
  dimension: DimensionName,
  from: number,
  by: number,
  [least, most]: readonly [number, number],
): unknown {
  const known = unitOf(dimension, each.name);
  const step = known ? toSI(each.step, known) : each.step;
  const to = Math.min(most, Math.max(least, (Math.round(from / step) + by) * step));
  const text = textIn(each, dimension, to);
  return each.name === '' ? Number(text) : text;
}

/** Whether two texts say the same figure in the same words, fractions of one character or of three. */
export const isSameText = (a: string, b: string): boolean => plainFractions(a.trim()) === plainFractions(b.trim());
