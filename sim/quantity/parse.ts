import { DIMENSIONS, type DimensionName, spelledOut, toSI, unitOf, unitsSentence } from './units.ts';

/** What keeps a text from being a quantity. */
export type Fault =
  | 'empty'
  | 'no number'
  | 'no unit'
  | 'other unit'
  | 'order'
  | 'comma'
  | 'half a fraction'
  | 'left over'
  | 'no value';

export type Parsed =
  | { readonly ok: true; readonly value: number; readonly units: readonly string[] }
  | { readonly ok: false; readonly fault: Fault; readonly found: string; readonly wanted: string };

/** Decimal, fraction ("3/8"), or whole number and fraction ("2 3/8", "1-1/2"). */
const NUMBER = /^(?:(\d+)[ -]+(\d+)\/(\d+)|(\d+)\/(\d+)|((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?))/;
const UNIT = /^(?:1\/s|[^\d\s.,+\-/]+[23]?(?:\/[^\d\s.,+\-/]+[23]?)?)/;

/** Units that may follow each other in one text, the greater first: "3 ft 6 in", "1 h 30 min". */
const CHAINS: readonly (readonly string[])[] = [
  ['ft', 'in'],
  ['d', 'h', 'min', 's'],
];

interface Term {
  readonly number: number;
  readonly unit: string;
}

/**
 * SI value of a quantity as people write it: "6 mm/d", "2 3/8 in", "-3 ft 6 in", "7' 6 1/2\"" (the sign holds for the
 * whole), with the units it is written in, in the list's own spelling. What does not fit comes back as what was found and what is wanted, never as an exception.
 */
export function parseQuantity(text: string, dimension: DimensionName): Parsed {
  const refuse = (fault: Fault, what: string): Parsed => ({
    ok: false,
    fault,
    found: what,
    wanted: `${DIMENSIONS[dimension].title}: ${unitsSentence(dimension)}`,
  });
  const plain = normalize(text);
  const signed = /^([+-]?)\s*(.*)$/s.exec(plain);
  const terms = termsOf(signed?.[2] ?? '');
  if (!Array.isArray(terms)) return refuse(terms.fault, `${quoted(text)}${terms.says}`);
  const units = terms.map(({ unit }) => unit);
  const misfit = units.find((unit) => unitOf(dimension, unit) === undefined);
  if (misfit !== undefined) return refuse('other unit', `the unit ${misfit} in ${quoted(text)}`);
  if (!inChain(units)) return refuse('order', `${quoted(text)}, whose units do not follow`);
  const value = sumOf(terms, dimension, signed?.[1] === '-' ? -1 : 1);
  return Number.isFinite(value)
    ? { ok: true, value, units }
    : refuse('no value', `${quoted(text)}, which is no number`);
}

function sumOf(terms: readonly Term[], dimension: DimensionName, sign: number): number {
  let sum = 0;
  for (const { number, unit } of terms) {
    const known = unitOf(dimension, unit);
    if (known) sum += toSI(sign * number, known);
  }
  return sum;
}

/** True minus sign, raised figures, single-character fractions and narrow spaces as typeset text has them, made plain. */
function normalize(text: string): string {
  return text
    .replace(/\u2212/g, '-')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(/['\u2032]\s*-\s*(?=\d)/g, "' ")
    .replace(/\s+/g, ' ')
    .trim();
}

/** The terms of an unsigned quantity, or what is wrong with it, `says` as the rest of a sentence. */
function termsOf(text: string): Term[] | { readonly fault: Fault; readonly says: string } {
  if (/\d,\d/.test(text)) return { fault: 'comma', says: ', whose comma can be read two ways' };
  if (/(?<![A-Za-z\d])\d+ ?\/(?! ?[\ds])/.test(text))
    return { fault: 'half a fraction', says: ', whose fraction is not finished' };
  const terms: Term[] = [];
  let rest = text;
  while (rest !== '') {
    const figures = NUMBER.exec(rest);
    if (!figures && terms.length === 0) return { fault: 'no number', says: ', which begins with no number' };
    if (!figures) return { fault: 'left over', says: `, with ${quoted(rest)} left over` };
    rest = rest.slice(figures[0].length).trimStart();
    const unit = UNIT.exec(rest)?.[0];
    if (unit === undefined) return { fault: 'no unit', says: ' without a unit' };
    rest = rest.slice(unit.length).trimStart();
    terms.push({ number: numberOf(figures), unit: spelledOut(unit) });
  }
  return terms.length === 0 ? { fault: 'empty', says: ', an empty text' } : terms;
}

function numberOf(figures: RegExpExecArray): number {
  const [, whole, top, bottom, soleTop, soleBottom, decimal] = figures;
  if (decimal !== undefined) return Number(decimal);
  if (whole !== undefined) return Number(whole) + Number(top) / Number(bottom);
  return Number(soleTop) / Number(soleBottom);
}

/** A lone unit, or several of one chain in falling order, none twice. */
function inChain(units: readonly string[]): boolean {
  if (units.length === 1) return true;
  const chain = CHAINS.find((each) => each.includes(units[0] ?? ''));
  if (!chain) return false;
  return units.every((unit, i) => {
    const rank = chain.indexOf(unit);
    return rank >= 0 && (i === 0 || rank > chain.indexOf(units[i - 1] ?? ''));
  });
}

const quoted = (text: string): string => JSON.stringify(text.length > 60 ? `${text.slice(0, 57)}…` : text);
