import { boreOf } from '../scenario/pipe-sizes.ts';
import { between, type SketchNumber, times } from './number.ts';
import { FOOT, GPH, INCH } from './units.ts';

/** Main line by the flow on the box: common practice, no source (it keeps the water at 4 to 8 ft/s). */
const SIZES: readonly (readonly [upTo: number, size: string])[] = [
  [2500 * GPH, '1 1/2 in'],
  [4500 * GPH, '2 in'],
  [10000 * GPH, '3 in'],
  [18000 * GPH, '4 in'],
  [Infinity, '6 in'],
];
const FEED_SIZES = ['4 in', '3 in', '2 in', '1 1/2 in', '1 1/4 in'] as const;

export const mainSize = (flow: number): string => SIZES.find(([upTo]) => flow <= upTo)?.[1] ?? '6 in';

/** The next size down from a main of that bore, m; the least there is where none is smaller. */
export const feedSize = (bore: number): string =>
  FEED_SIZES.find((size) => (boreOf(size) ?? 0) < bore * 0.98) ?? '1 1/4 in';

export const PUMP_NUMBERS: readonly SketchNumber[] = [
  {
    key: 'pump',
    called: 'the pump',
    asks: 'What do the pump’s box or curve say: most flow, most head?',
    first: true,
  },
  {
    key: 'pipe.size',
    called: 'the size of the main line',
    asks: 'What size is the pipe up to the filter?',
    first: true,
    fallback: (site) => mainSize(site.boxFlow),
    by: 'the pump’s flow',
    origin: 'common practice',
    other: '5 in',
  },
  {
    key: 'pipe.length',
    called: 'the length of the main line',
    asks: 'How long is that pipe?',
    first: true,
    dimension: 'length',
    range: [2 * FOOT, 600 * FOOT],
    fallback: (site) => 1.5 * site.pond.length,
    by: 'one and a half times the pond’s length',
    band: times(2 / 3, 5 / 3),
    origin: 'our default',
  },
  {
    key: 'pipe.elbows',
    called: 'the elbows in the main line',
    asks: 'How many elbows has it?',
    first: true,
    dimension: 'number',
    range: [0, 30],
    fallback: () => 4,
    band: between(2, 8),
    origin: 'our default',
  },
  {
    key: 'pipe.checkValve',
    called: 'the check valve',
    asks: 'Is there a check valve?',
    first: true,
    words: ['yes', 'no', 'unknown'],
    fallback: () => 'unknown',
    origin: 'our default',
    other: 'no',
    covers: ['plumbing.main.checkValve'],
  },
  {
    key: 'checkValveLoss',
    called: 'the loss in the check valve',
    asks: 'What K has the check valve?',
    first: false,
    dimension: 'number',
    range: [0, 20],
    fallback: () => 2.5,
    band: between(1.5, 8),
    origin: 'our default',
  },
  {
    key: 'feeds',
    called: 'the feeds of the filter',
    asks: 'Does the water enter the filter below, on top, or both?',
    first: true,
    words: ['both', 'bottom', 'top'],
    fallback: () => 'both',
    origin: 'our default',
    other: 'bottom',
  },
  {
    key: 'bottomValve',
    called: 'the bottom valve',
    asks: 'How far open is the bottom valve?',
    first: true,
    dimension: 'fraction',
    range: [0, 1],
    fallback: () => 1,
    origin: 'our default',
    other: 0.5,
    covers: ['plumbing.bottomFeed.valve'],
  },
  {
    key: 'topValve',
    called: 'the top valve',
    asks: 'How far open is the top valve?',
    first: true,
    dimension: 'fraction',
    range: [0, 1],
    fallback: () => 1,
    origin: 'our default',
    other: 0.5,
    covers: ['plumbing.topFeed.valve'],
  },
  {
    key: 'intakeWidth',
    called: 'the width of the intake',
    asks: 'How wide is the intake?',
    first: false,
    dimension: 'length',
    range: [6 * INCH, 10 * FOOT],
    fallback: () => 24 * INCH,
    band: between(16 * INCH, 36 * INCH),
    origin: 'our default',
  },
  {
    key: 'intakeLip',
    called: 'the depth of the intake’s lip',
    asks: 'How far under the water is the intake’s lip?',
    first: false,
    dimension: 'length',
    range: [INCH, 2 * FOOT],
    fallback: (site) => Math.min(6 * INCH, site.pond.depth / 3),
    by: 'the pond’s depth',
    // A lip can be no deeper than leaves a floor under it.
    band: (lip, site) => [Math.min(lip, 4 * INCH), Math.max(lip, Math.min(10 * INCH, (2 / 3) * site.pond.depth))],
    origin: 'our default',
  },
  {
    key: 'blockage',
    called: 'the leaves on the intake',
    asks: 'How much of the intake is blocked?',
    first: false,
    dimension: 'fraction',
    range: [0, 0.9],
    fallback: () => 0.1,
    // Left alone for a season it is half blocked, and up to 80 %.
    band: between(0, 0.5),
    origin: 'our default',
  },
  {
    key: 'efficiency',
    called: 'the pump’s efficiency from wire to water',
    asks: 'What efficiency has the pump?',
    first: false,
    dimension: 'fraction',
    range: [0.02, 0.9],
    fallback: () => 0.25,
    band: between(0.15, 0.4),
    origin: 'our default',
  },
];
