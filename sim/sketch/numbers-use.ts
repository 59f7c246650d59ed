import { between, type SketchNumber, times } from './number.ts';
import { GALLON, GPM, MM_PER_DAY } from './units.ts';

/** What the open air takes, by climate: our default, of the order of summer means of open water. */
const EVAPORATION = { cool: 2.5 * MM_PER_DAY, warm: 4.5 * MM_PER_DAY, 'hot dry': 8 * MM_PER_DAY } as const;

export const evaporationIn = (climate: number | string): number =>
  typeof climate === 'number' ? climate : (EVAPORATION[climate as keyof typeof EVAPORATION] ?? EVAPORATION.warm);

export const USE_NUMBERS: readonly SketchNumber[] = [
  {
    key: 'bucket',
    called: 'the hose’s flow',
    asks: 'How large is the bucket, and in how many seconds does the hose fill it?',
    first: true,
    dimension: 'flow',
    range: [0.2 * GPM, 100 * GPM],
    fallback: () => [5 * GALLON, 33],
    band: () => [4 * GPM, 15 * GPM],
    origin: 'our default',
  },
  {
    key: 'autofill',
    called: 'the autofill',
    asks: 'Is there an autofill, and where?',
    first: true,
    words: ['none', 'pond', 'vault'],
    fallback: () => 'none',
    origin: 'our default',
    other: 'pond',
  },
  {
    key: 'autofillFlow',
    called: 'the autofill’s flow',
    asks: 'How much does the autofill give when full open?',
    first: false,
    dimension: 'flow',
    range: [0.1 * GPM, 50 * GPM],
    fallback: () => 4 * GPM,
    band: between(GPM, 8 * GPM),
    origin: 'our default',
  },
  {
    key: 'climate',
    called: 'the evaporation by the climate',
    asks: 'What is the summer like?',
    first: true,
    dimension: 'depthRate',
    words: Object.keys(EVAPORATION),
    range: [0, 20 * MM_PER_DAY],
    fallback: () => 'warm',
    band: () => times(0.7, 1.3)(EVAPORATION.warm),
    origin: 'our default',
  },
];
