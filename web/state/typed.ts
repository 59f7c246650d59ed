/** Figures as they are typed: the unit somebody used is kept when a hand moves the value on. */
import { type DimensionName, type Display, fromSI, parseQuantity, toSI, unitOf } from '../../sim/quantity/index.ts';
import { figureOf, type Writer } from '../../sim/studies/setting.ts';
import { feetAndInches, plainFractions, trueFractions } from './typed-inches.ts';

/** How a page writes figures. */
export interface Manner {
  readonly display: Display;
  /** The unit was typed here and stays, whatever the page is shown in. */
  readonly kept: boolean;
}

/** The least step worth setting, by unit: what a ruler, a bucket or a handle shows. */
const STEPS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 0.1,
  m: 0.001,
  in: 1 / 8,
  ft: 1 / 96,
  'L/s': 0.005,
  'L/min': 0.5,
  'L/h': 20,
  'm3/h': 0.02,
  gpm: 0.1,
  gph: 5,
  m2: 0.05,
  mL: 10,
  L: 0.1,
  m3: 1e-4,
  gal: 0.02,
  ft2: 0.5,
  '%': 1,
};

/** What a figure that only goes along is written to: the shape of a crest is not rounded away. A share of a step; m. */
const ALONG = { metric: 1 / 10, inches: 1 / 8, bare: 1e-5 };

const EIGHTHS = 8;

/** What a new figure is written in. */
const USUAL: Readonly<Record<Display, Readonly<Partial<Record<DimensionName, string>>>>> = {
  metric: { length: 'mm', flow: 'L/min', area: 'm2', volume: 'L', time: 'h', speed: 'm/s', depthRate: 'mm/d' },
  us: { length: 'in', flow: 'gpm', area: 'ft2', volume: 'gal', time: 'h', speed: 'ft/s', depthRate: 'in/week' },
};

const US_UNITS = /^(in2?|ft[23]?|gal|gpm|gph)$/;
const METRIC_UNITS = /^([cm]?m[23]?|m?L|L\/s|L\/min|L\/h|m3\/[hs])$/;
const isForeign = (unit: string, display: Display): boolean => (display === 'us' ? METRIC_UNITS : US_UNITS).test(unit);

/** The last unit of a typed quantity ('3 ft 6 in' goes on in inches), or undefined where it can't be read. */
export function unitTyped(value: unknown, dimension: DimensionName): string | undefined {
  if (typeof value !== 'string') return undefined;
  const parsed = parseQuantity(value, dimension);
  return parsed.ok ? parsed.units.at(-1) : undefined;
}

/** The unit a value is shown in and goes on in: the typed one, unless the page is in the other system's. */
export function unitFor(before: unknown, dimension: DimensionName, { display, kept }: Manner): string | undefined {
  const typed = unitTyped(before, dimension);
  return typed === undefined || (isForeign(typed, display) && !kept) ? USUAL[display][dimension] : typed;
}

/** The step of a value in SI, by the unit it is shown in. */
export function stepOf(before: unknown, dimension: DimensionName, manner: Manner): number {
  const name = unitFor(before, dimension, manner) ?? '';
  const unit = unitOf(dimension, name);
  if (dimension === 'fraction' || dimension === 'number' || !unit) return 0.01;
  return toSI(STEPS[name] ?? 1, unit) - toSI(0, unit);
}

/** Writes figures on in the unit they are shown in, to its step; a bare number stays bare. */
export function asTyped(manner: Manner): Writer {
  return (value, before, dimension, along) => {
    const own = along ? { ...manner, kept: true } : manner;
    if (typeof before !== 'number') {
      const name = unitFor(before, dimension, own);
      if (name !== undefined) return written(value, dimension, name, before, along);
    }
    const step = along ? ALONG.bare : stepOf(before, dimension, own);
    return tidy(Math.round(value / step) * step);
  };
}

/** A figure in a unit, to its step, or finer where it only goes along; lengths in feet and inches as a tape has them. */
function written(value: number, dimension: DimensionName, name: string, before: unknown, fine: boolean): string {
  const unit = unitOf(dimension, name);
  if (!unit) return String(value);
  if (name === 'in' || name === 'ft') {
    const first = typeof before === 'string' ? parseQuantity(before, 'length') : undefined;
    const inInches = first?.ok === true && first.units[0] === 'in';
    return feetAndInches(value, fine ? EIGHTHS / ALONG.inches : EIGHTHS, inInches);
  }
  const grain = (STEPS[name] ?? 1) * (fine ? ALONG.metric : 1);
  return `${tidy(Math.round(fromSI(value, unit) / grain) * grain)} ${name}`;
}

/** Without the dust of binary fractions, and no minus nought. */
const tidy = (value: number): number => Number(value.toPrecision(10)) + 0;

/** A figure as a new one is written into a file. */
export const newlyWritten = (value: number, dimension: DimensionName, display: Display): string =>
  written(value, dimension, USUAL[display][dimension] ?? '', undefined, false);

/**
 * What a dial shows of a file's value: a text in its own unit or, where the page is in the other system and nobody
 * typed it here, in the page's; a bare number in the page's unit; what can't be read as it stands.
 */
export function shownAs(value: unknown, dimension: DimensionName, manner: Manner): string {
  const figure = figureOf(value, dimension);
  if (figure === undefined) return typeof value === 'string' ? value : '';
  const unit = unitFor(value, dimension, manner);
  if (unit === undefined) return typeset(String(value));
  const own = typeof value === 'string' && unit === unitTyped(value, dimension);
  return typeset(own ? value : written(figure, dimension, unit, undefined, typeof value === 'number' && unit !== 'in'));
}

/** A true minus, raised figures, single-character fractions. */
export const typeset = (text: string): string =>
  trueFractions(text)
    .replace(/^-/, '\u2212')
    .replace(/(?<=m|ft|in)2$/, '²')
    .replace(/(?<=\d)%$/, ' %')
    .replace('m3', 'm³');

/** What is put in a file for a typed text: a bare number takes the unit of what it replaces, where that had one. */
export function toFile(text: string, before: unknown): unknown {
  const plain = text.trim().replace(/\u2212/g, '-');
  const bare = plainFractions(plain);
  const number = Number(bare);
  const isBare = bare !== '' && (Number.isFinite(number) || /^[+-]?\d+([ -]\d+)?\/\d+$/.test(bare));
  if (!isBare) return plain;
  const unit =
    typeof before === 'string' ? /[\d¼-¾⅐-⅞]\s*(["'A-Za-z%][^\s\d]*\d?)$/.exec(before.trim())?.[1] : undefined;
  if (unit !== undefined) return `${plain} ${unit}`;
  return Number.isFinite(number) ? number : plain;
}
