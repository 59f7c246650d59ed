/** Figures as they are typed: the unit somebody used is kept when a hand moves the value on. */
import { DIMENSIONS, type DimensionName, type Display, fromSI, toSI, unitOf } from '../../sim/quantity/index.ts';
import type { Writer } from '../../sim/studies/setting.ts';

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
  '%': 1,
};

/** What a new figure is written in. */
const USUAL: Readonly<Record<Display, Readonly<Partial<Record<DimensionName, string>>>>> = {
  metric: { length: 'mm', flow: 'L/min', area: 'm2', volume: 'L', time: 'h', speed: 'm/s', depthRate: 'mm/d' },
  us: { length: 'in', flow: 'gpm', area: 'ft2', volume: 'gal', time: 'h', speed: 'ft/s', depthRate: 'in/week' },
};

/** The one unit of a typed quantity, or undefined where it has none or several ('3 ft 6 in' goes on in inches). */
export function unitTyped(value: unknown, dimension: DimensionName): string | undefined {
  if (typeof value !== 'string') return undefined;
  const names = Object.keys(DIMENSIONS[dimension].units).sort((a, b) => b.length - a.length);
  return names.find((name) => value.trimEnd().endsWith(name));
}

/** The unit in which a value goes on: the typed one; a bare number stays bare; a new one takes the display's. */
export function unitFor(before: unknown, dimension: DimensionName, display: Display): string | undefined {
  if (typeof before === 'number') return undefined;
  return unitTyped(before, dimension) ?? USUAL[display][dimension];
}

/** The step of a value in SI, by the unit it is typed in. */
export function stepOf(before: unknown, dimension: DimensionName, display: Display): number {
  const name = unitFor(before, dimension, display) ?? USUAL[display][dimension] ?? '';
  const unit = unitOf(dimension, name);
  if (dimension === 'fraction' || dimension === 'number' || !unit) return 0.01;
  return toSI(STEPS[name] ?? 1, unit) - toSI(0, unit);
}

/** Writes figures on in the unit they were typed in, to its step. */
export function asTyped(display: Display): Writer {
  return (value, before, dimension) => {
    const name = unitFor(before, dimension, display);
    const unit = name === undefined ? undefined : unitOf(dimension, name);
    const step = stepOf(before, dimension, display);
    if (name === undefined || !unit) return tidy(Math.round(value / step) * step);
    const grain = STEPS[name] ?? 1;
    return `${tidy(Math.round(fromSI(value, unit) / grain) * grain)} ${name}`;
  };
}

/** Without the dust of binary fractions, and no minus nought. */
const tidy = (value: number): number => Number(value.toPrecision(10)) + 0;

/** What a field shows of a file's value: a text as typed, with a true minus; a bare number with the unit it is in. */
export function shownAs(value: unknown, dimension: DimensionName): string {
  if (typeof value === 'string') return value.replace(/^-/, '\u2212');
  if (typeof value !== 'number') return '';
  const { si } = DIMENSIONS[dimension];
  return `${String(value).replace(/^-/, '\u2212')}${si === '' ? '' : ` ${si}`}`;
}

/** What is put in a file for a typed text: a bare number takes the unit of what it replaces, where that had one. */
export function toFile(text: string, before: unknown): unknown {
  const plain = text.trim().replace(/\u2212/g, '-');
  const number = Number(plain);
  if (plain === '' || !Number.isFinite(number)) return plain;
  const unit = typeof before === 'string' ? /\d\s*([A-Za-z%][^\s\d]*\d?)$/.exec(before.trim())?.[1] : undefined;
  return unit === undefined ? number : `${plain} ${unit}`;
}
