/** The numbers of a sketch as the page asks them, in the order of the water's way. */
import type { DimensionName } from '../../sim/quantity/index.ts';
import type { SketchNumber } from '../../sim/sketch/number.ts';
import { SKETCH_NUMBERS } from '../../sim/sketch/numbers.ts';
import { valueAt } from '../../sim/studies/place.ts';
import {
  AREA,
  BUCKET,
  COUNT,
  FAR,
  FINE,
  HEAD,
  NEAR,
  PLAIN,
  PUMPED,
  RAIN,
  SECONDS,
  SHARE,
  SMALL_SHARE,
  TAP,
  type Units,
} from './units.ts';

/** One field of a number: most have one, the pump, the bucket and the shelf two. */
export interface Figure {
  /** What it adds to the number's place, '.flow'. */
  readonly at: string;
  /** What it is called beside another one; '' where it is alone. */
  readonly name: string;
  readonly dimension: DimensionName;
  readonly units: Units;
}

export interface Row {
  readonly number: SketchNumber;
  readonly place: string;
  /** Part of the water's way it belongs to. */
  readonly part: string;
  /** In a word or two, as a press calls it. */
  readonly name: string;
  readonly figures: readonly Figure[];
  /** Words it may be given by, as they are pressed. */
  readonly words: readonly (readonly [word: string, says: string])[];
  /** What its band is told in, where the number is a word. */
  readonly bandUnits?: Units;
  /** Of what its band is a share. */
  readonly bandOf?: string;
}

type Asked = Omit<Row, 'number' | 'place' | 'part' | 'figures' | 'words'> & {
  readonly units?: Units;
  readonly figures?: readonly Figure[];
  readonly says?: Readonly<Record<string, string>>;
};

const SIZES = ['1 1/4 in', '1 1/2 in', '2 in', '3 in', '4 in', '6 in', '50 mm', '63 mm', '75 mm', '90 mm', '110 mm'];

const figure = (at: string, name: string, dimension: DimensionName, units: Units): Figure => ({
  at,
  name,
  dimension,
  units,
});

const PARTS: readonly (readonly [part: string, numbers: Readonly<Record<string, Asked>>])[] = [
  [
    'the pond',
    {
      length: { name: 'length', units: FAR },
      width: { name: 'width', units: FAR },
      depth: { name: 'depth', units: NEAR },
      plan: { name: 'outline', bandUnits: SHARE, bandOf: ' of length × width' },
      shelf: {
        name: 'shelf',
        says: { none: 'none' },
        figures: [figure('.depth', 'down', 'length', NEAR), figure('.width', 'wide', 'length', NEAR)],
      },
      rock: { name: 'rock', bandUnits: SHARE, bandOf: ' of the volume' },
      gravel: { name: 'gravel', units: FINE },
      edge: { name: 'liner edge', units: FINE },
    },
  ],
  [
    'the intake and the pump',
    {
      intakeWidth: { name: 'intake’s width', units: NEAR },
      intakeLip: { name: 'intake’s lip', units: FINE },
      blockage: { name: 'leaves on the screen', units: SHARE },
      pump: {
        name: 'pump',
        figures: [figure('.flow', 'most flow', 'flow', PUMPED), figure('.head', 'most head', 'length', HEAD)],
      },
      efficiency: { name: 'efficiency', units: SHARE },
    },
  ],
  [
    'the main line',
    {
      'pipe.size': { name: 'pipe’s size' },
      'pipe.length': { name: 'pipe’s length', units: FAR },
      'pipe.elbows': { name: 'elbows', units: COUNT },
      'pipe.checkValve': { name: 'check valve' },
      checkValveLoss: { name: 'check valve’s K', units: PLAIN },
    },
  ],
  [
    'the filter',
    {
      feeds: { name: 'feeds', says: { bottom: 'below', top: 'on top' } },
      bottomValve: { name: 'bottom valve', units: SHARE },
      topValve: { name: 'top valve', units: SHARE },
      lip: { name: 'filter’s lip', units: NEAR },
      lipWidth: { name: 'lip’s width', units: NEAR },
      sides: { name: 'sides', units: FINE },
    },
  ],
  [
    'the falls and the stream',
    {
      poolArea: { name: 'pool’s area', units: AREA },
      poolEdge: { name: 'pool’s edge', units: FINE },
      stone: { name: 'main stone', units: NEAR },
      sideStone: { name: 'side stone', units: FINE },
      splash: { name: 'splash', units: SMALL_SHARE },
      stream: { name: 'stream', units: FAR },
      slope: { name: 'slope', units: SHARE },
    },
  ],
  [
    'the supply and the weather',
    {
      bucket: {
        name: 'hose',
        figures: [figure('[0]', 'bucket', 'volume', BUCKET), figure('[1]', 'filled in', 'time', SECONDS)],
        bandUnits: TAP,
      },
      autofill: { name: 'autofill', says: { pond: 'in the pond', vault: 'in the vault' } },
      autofillFlow: { name: 'autofill’s flow', units: TAP },
      climate: { name: 'summer', bandUnits: RAIN },
    },
  ],
];

function rowOf(part: string, key: string, { units, figures, says, ...asked }: Asked): Row | undefined {
  const number = SKETCH_NUMBERS.find((each) => each.key === key);
  if (!number) return undefined;
  const listed = key === 'pipe.size' ? SIZES : (number.words ?? Object.keys(says ?? {}));
  // Every number may be not known: that is no answer of its own.
  const words = listed.filter((word) => word !== 'unknown');
  const own = units && number.dimension ? [figure('', '', number.dimension, units)] : [];
  return {
    ...asked,
    number,
    part,
    place: `sketch.${key}`,
    figures: figures ?? own,
    words: words.map((word) => [word, says?.[word] ?? word] as const),
  };
}

export const ROWS: readonly Row[] = PARTS.flatMap(([part, numbers]) =>
  Object.entries(numbers).flatMap(([key, asked]) => rowOf(part, key, asked) ?? []),
);

export const rowAt = (place: string): Row | undefined => ROWS.find((row) => row.place === place);

/** A row as a file has it: a pump by its curve has a flow and a head for each point. */
export function rowIn(row: Row, file: unknown): Row {
  const points = row.number.key === 'pump' ? valueAt(file, row.place) : undefined;
  if (!Array.isArray(points)) return row;
  const figures = points.flatMap((_, i) => [
    figure(`[${i}][0]`, `point ${i + 1}: flow`, 'flow', PUMPED),
    figure(`[${i}][1]`, `point ${i + 1}: head`, 'length', HEAD),
  ]);
  return { ...row, figures };
}
