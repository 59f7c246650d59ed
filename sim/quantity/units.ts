/**
 * The closed list of units a file may use, with their exact factors.
 *
 * Source: NIST Special Publication 811 (2008), Appendix B: 1 in = 25.4 mm, 1 US gal = 231 in³, 1 lb = 0.45359237 kg,
 * 1 kgf = 9.80665 N and 1 bar = 100 kPa are exact, and so is everything made of them.
 * A factor is kept as a fraction, so that "78 mm" is the same double as 0.078.
 */

export interface Unit {
  /** SI value = (x − zero) · times / over. */
  readonly times: number;
  readonly over: number;
  readonly zero: number;
}

export interface Dimension {
  /** What a value of it is called in a sentence: 'a length'. */
  readonly title: string;
  /** Unit of a bare number; '' where it has none. */
  readonly si: string;
  readonly units: Readonly<Record<string, Unit>>;
}

const unit = (times: number, over = 1, zero = 0): Unit => ({ times, over, zero });

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86400;
const WEEK = 604800;
/** US gallon in units of 1e-12 m³. */
const GALLON = 3785411784;
const LBF = 4.4482216152605;

const define = <K extends string>(table: Record<K, Dimension>): Readonly<Record<K, Dimension>> => table;

export const DIMENSIONS = define({
  length: {
    title: 'a length',
    si: 'm',
    units: { mm: unit(1, 1000), cm: unit(1, 100), m: unit(1), in: unit(254, 10000), ft: unit(3048, 10000) },
  },
  area: {
    title: 'an area',
    si: 'm2',
    units: {
      mm2: unit(1, 1e6),
      cm2: unit(1, 1e4),
      m2: unit(1),
      in2: unit(254 * 254, 1e8),
      ft2: unit(3048 * 3048, 1e8),
    },
  },
  volume: {
    title: 'a volume',
    si: 'm3',
    units: {
      mL: unit(1, 1e6),
      L: unit(1, 1000),
      m3: unit(1),
      gal: unit(GALLON, 1e12),
      ft3: unit(3048 ** 3, 1e12),
    },
  },
  flow: {
    title: 'a flow',
    si: 'm3/s',
    units: {
      'L/s': unit(1, 1000),
      'L/min': unit(1, 1000 * MINUTE),
      'L/h': unit(1, 1000 * HOUR),
      'm3/h': unit(1, HOUR),
      'm3/s': unit(1),
      gpm: unit(GALLON, 1e12 * MINUTE),
      gph: unit(GALLON, 1e12 * HOUR),
    },
  },
  time: { title: 'a time', si: 's', units: { s: unit(1), min: unit(MINUTE), h: unit(HOUR), d: unit(DAY) } },
  temperature: { title: 'a temperature', si: 'degC', units: { degC: unit(1), degF: unit(5, 9, 32) } },
  pressure: {
    title: 'a pressure',
    si: 'Pa',
    units: { Pa: unit(1), kPa: unit(1000), bar: unit(1e5), psi: unit(LBF * 1e8, 254 * 254) },
  },
  power: { title: 'a power', si: 'W', units: { W: unit(1) } },
  force: { title: 'a force', si: 'N', units: { N: unit(1), kgf: unit(980665, 1e5), lbf: unit(LBF) } },
  depthRate: {
    title: 'a depth a time',
    si: 'm/s',
    units: {
      'mm/h': unit(1, 1000 * HOUR),
      'mm/d': unit(1, 1000 * DAY),
      'in/h': unit(254, 10000 * HOUR),
      'in/d': unit(254, 10000 * DAY),
      'in/week': unit(254, 10000 * WEEK),
    },
  },
  concentration: { title: 'a concentration', si: 'kg/m3', units: { 'mg/L': unit(1, 1000), 'kg/m3': unit(1) } },
  massRate: { title: 'a mass a time', si: 'kg/s', units: { 'kg/s': unit(1), 'g/d': unit(1, 1000 * DAY) } },
  speed: { title: 'a speed', si: 'm/s', units: { 'm/s': unit(1), 'ft/s': unit(3048, 10000) } },
  rate: { title: 'a rate', si: '1/s', units: { '1/s': unit(1) } },
  angle: { title: 'an angle', si: 'deg', units: { deg: unit(1) } },
  fraction: { title: 'a fraction', si: '', units: { '%': unit(1, 100) } },
  number: { title: 'a number', si: '', units: {} },
});

export type DimensionName = keyof typeof DIMENSIONS;

/** What people write for a unit of the list: marks of the tape, whole words, words of the trade. */
const SPELLINGS: Readonly<Record<string, string>> = {
  "'": 'ft',
  '\u2032': 'ft',
  '\u2019': 'ft',
  foot: 'ft',
  feet: 'ft',
  '"': 'in',
  "''": 'in',
  '\u2033': 'in',
  '\u201d': 'in',
  inch: 'in',
  inches: 'in',
  second: 's',
  seconds: 's',
  sec: 's',
  minute: 'min',
  minutes: 'min',
  mins: 'min',
  hour: 'h',
  hours: 'h',
  hr: 'h',
  hrs: 'h',
  day: 'd',
  days: 'd',
  wk: 'week',
  'gal/min': 'gpm',
  'gal/h': 'gph',
  lpm: 'L/min',
  l: 'L',
  gallon: 'gal',
  gallons: 'gal',
};

/** A unit as the list spells it: 'in/day' is 'in/d'; what the list does not know stays as it is. */
export function spelledOut(name: string): string {
  const own = (part: string): string => {
    const small = part.toLowerCase();
    return Object.hasOwn(SPELLINGS, small) ? (SPELLINGS[small] ?? part) : part;
  };
  return own(name.split('/').map(own).join('/'));
}

/** SI value of `x` counted in `unit`. */
export const toSI = (x: number, { times, over, zero }: Unit): number => ((x - zero) * times) / over;

/** What an SI value counts in `unit`. */
export const fromSI = (value: number, { times, over, zero }: Unit): number => (value * over) / times + zero;

/** The unit of that name among a dimension's, if it has it. */
export function unitOf(dimension: DimensionName, name: string): Unit | undefined {
  const { units } = DIMENSIONS[dimension];
  return Object.hasOwn(units, name) ? units[name] : undefined;
}

/** 'm, or with mm, cm, m, in, ft': how a value of the dimension may be written. */
export function unitsSentence(dimension: DimensionName): string {
  const { si, units } = DIMENSIONS[dimension];
  const names = Object.keys(units);
  if (names.length === 0) return 'a figure without unit';
  const bare = si === '' ? 'a number' : `a number (in ${si})`;
  return `${bare}, or a text with ${names.length === 1 ? 'the unit' : 'one of the units'} ${names.join(', ')}`;
}
