/** Figures as they are typed beside a pond: a bare one counts in the unit the field shows. */
import { type DimensionName, type Display, fromSI, parseQuantity, unitOf } from '../../sim/quantity/index.ts';
import { typeset } from '../state/typed.ts';
import { feetAndInches } from '../state/typed-inches.ts';
import { unread } from '../state/unread.ts';

export type TypedFigure = { readonly value: number | undefined } | { readonly wrong: string };

const UNITS: Readonly<Record<Display, Readonly<Partial<Record<DimensionName, string>>>>> = {
  metric: { length: 'mm', volume: 'L', time: 's', pressure: 'bar', flow: 'L/min', fraction: '%' },
  us: { length: 'in', volume: 'gal', time: 's', pressure: 'psi', flow: 'gpm', fraction: '%' },
};

const EXAMPLES: Readonly<Record<Display, Readonly<Partial<Record<DimensionName, string>>>>> = {
  metric: { length: '25 mm', volume: '10 L', time: '33 s', pressure: '3 bar', fraction: '50 %' },
  us: { length: '2 3/4 in', volume: '5 gal', time: '33 s', pressure: '45 psi', fraction: '50 %' },
};

/** SI of a typed figure; nothing typed is undefined, and what can't be read is told in words. */
export function typedFigure(text: string, dimension: DimensionName, display: Display, bare?: string): TypedFigure {
  const plain = text.trim();
  if (plain === '') return { value: undefined };
  const own = parseQuantity(plain, dimension);
  if (own.ok) return { value: own.value };
  const unit = bare ?? UNITS[display][dimension];
  if (own.fault === 'no unit' && unit !== undefined) {
    const parsed = parseQuantity(`${plain} ${unit}`, dimension);
    if (parsed.ok) return { value: parsed.value };
  }
  return { wrong: `${unread(plain, own)} can’t be read: give it as ${EXAMPLES[display][dimension] ?? 'a number'}.` };
}

const EIGHTHS = 8;

/** A figure as a field shows it, in the display's own unit: '10 L', '5 gal', '14¼ in', '340 mm', '33 s'. */
export function shownFigure(value: number, dimension: DimensionName, display: Display, asked?: string): string {
  const name = asked ?? UNITS[display][dimension] ?? '';
  if (name === 'in' || name === 'ft') return typeset(feetAndInches(value, EIGHTHS, name === 'in'));
  const unit = unitOf(dimension, name);
  const figure = unit ? fromSI(value, unit) : value;
  const decimals = name === 'mm' ? 0 : name === 's' ? 1 : 2;
  return typeset(`${Number(figure.toFixed(decimals))} ${name}`);
}

/** A flow as a file takes it, to five digits: a bucket's seconds come back from it as they were typed. */
export function flowText(flow: number, display: Display): string {
  const name = display === 'us' ? 'gpm' : 'L/min';
  const unit = unitOf('flow', name);
  return unit ? `${Number(fromSI(flow, unit).toPrecision(5))} ${name}` : String(flow);
}

/** A value in a unit of its own as a file takes it, to six digits. */
export function fileText(value: number, dimension: DimensionName, display: Display, asked?: string): string {
  const name = asked ?? UNITS[display][dimension] ?? '';
  const unit = unitOf(dimension, name);
  return unit ? `${Number(fromSI(value, unit).toPrecision(6))} ${name}` : String(value);
}
