import { between, type SketchNumber } from './number.ts';
import { FOOT, INCH, MM } from './units.ts';

/** Rock and gravel in the pond, share of its volume: our default. */
const ROCK = { little: 0.05, usual: 0.12, much: 0.25 } as const;
/** Below this depth a pond has no shelf. */
const SHELVED = 18 * INCH;

export const rockShare = (rock: number | string): number =>
  typeof rock === 'number' ? rock : (ROCK[rock as keyof typeof ROCK] ?? ROCK.usual);

export const POND_NUMBERS: readonly SketchNumber[] = [
  {
    key: 'length',
    called: 'the pond’s length',
    asks: 'How long is the pond at the water line?',
    first: true,
    dimension: 'length',
    range: [3 * FOOT, 200 * FOOT],
  },
  {
    key: 'width',
    called: 'the pond’s width',
    asks: 'How wide is it at the water line?',
    first: true,
    dimension: 'length',
    range: [2 * FOOT, 200 * FOOT],
  },
  {
    key: 'depth',
    called: 'the pond’s depth',
    asks: 'How deep is the water at its deepest?',
    first: true,
    dimension: 'length',
    range: [10 * INCH, 12 * FOOT],
  },
  {
    key: 'plan',
    called: 'the outline of the pond',
    asks: 'What outline has it?',
    first: true,
    dimension: 'fraction',
    words: ['freeform', 'oval', 'rectangle'],
    range: [0.5, 1],
    fallback: () => 'freeform',
    band: () => [0.8, 0.85],
    origin: 'common practice',
    covers: ['pond.shape.plan'],
  },
  {
    key: 'shelf',
    called: 'the shelf in the pond',
    asks: 'How far down is its shelf, and how wide?',
    first: true,
    fallback: (site) => {
      const { length, width, depth } = site.pond;
      return depth < SHELVED ? [] : [{ depth: 12 * INCH, width: Math.min(18 * INCH, Math.min(width, length) / 6) }];
    },
    by: 'the pond’s depth and width',
    origin: 'our default',
    other: [{ depth: 3 * INCH, width: INCH }],
  },
  {
    key: 'rock',
    called: 'the share of rock in the pond',
    asks: 'How much rock stands in the water?',
    first: true,
    dimension: 'fraction',
    words: Object.keys(ROCK),
    range: [0, 0.35],
    fallback: () => 'usual',
    band: () => [ROCK.little, ROCK.much],
    origin: 'our default',
  },
  {
    key: 'gravel',
    called: 'the gravel on the pond’s floor',
    asks: 'How thick is the gravel on the floor?',
    first: false,
    dimension: 'length',
    range: [0, 8 * INCH],
    fallback: () => 3 * INCH,
    band: between(INCH, 5 * INCH),
    origin: 'our default',
  },
  {
    key: 'edge',
    called: 'the height of the pond’s edge above the water',
    asks: 'How far above the water is the lowest edge of the liner?',
    first: true,
    dimension: 'length',
    range: [INCH / 2, 2 * FOOT],
    fallback: () => 3 * INCH,
    // Ten millimeters of the laser; what soft ground and rock press it down in a year is more.
    band: (edge) => [edge - 25 * MM, edge + 10 * MM],
    origin: 'our default',
  },
];
