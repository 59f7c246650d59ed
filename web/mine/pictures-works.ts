/** Small pictures of what is measured at the pump, the main line and the filter. */
import { box, circle, type Mark, type Pixel, path } from '../section/marks.ts';
import { earth, measured, pipe, thin } from './picture-marks.ts';

/** A filter cut upright: rack, mats, water up to its lip at the right. */
const filter = (): Mark[] => [
  path(box(22, 14, 30, 36), 'w1'),
  path(box(22, 26, 30, 6), 'mat'),
  path(box(22, 33, 30, 6), 'mat'),
  path('M22 14H56', 'surface'),
  path('M22 8V50H52V14H57', 'vessel-line'),
];

const LOWER: readonly Pixel[] = [
  [2, 45],
  [24, 45],
];
const UPPER: readonly Pixel[] = [
  [2, 30],
  [8, 30],
  [8, 5],
  [30, 5],
  [30, 11],
];

const feeds = (word = 'both'): Mark[] => [
  ...filter(),
  ...pipe(LOWER, word !== 'top'),
  ...pipe(UPPER, word !== 'bottom'),
];

/** A valve seen from above, its handle in line with the pipe. */
const valve = (y: number): Mark[] => [path(circle(12, y, 7), 'fitting'), path(`M5 ${y}H19`, 'measured handle')];

/** The main line up a slope. */
const LINE: readonly Pixel[] = [
  [8, 46],
  [20, 46],
  [52, 16],
  [66, 16],
];

/** A riser with a flap in it. */
const riser = (word = 'unknown'): Mark[] => [
  ...pipe(
    [
      [36, 54],
      [36, 2],
    ],
    true,
  ),
  ...(word === 'no'
    ? []
    : [
        path(circle(36, 28, 10), word === 'unknown' ? 'fitting doubtful' : 'fitting'),
        path('M29 33L43 24', 'measured'),
      ]),
];

const pumpBody = (): Mark[] => [
  path('M20 50V34q0 -6 6 -6h16q6 0 6 6v16Z', 'pump'),
  ...pipe(
    [
      [34, 28],
      [34, 4],
    ],
    true,
  ),
];

const WORKS = {
  pump: () => [
    thin(12, 6, 12, 48),
    thin(12, 48, 68, 48),
    path('M12 12C36 13 52 24 60 48', 'measured'),
    path(`${circle(12, 12, 2.4)}${circle(60, 48, 2.4)}`, 'dot'),
  ],
  efficiency: () => [...pumpBody(), path('M48 42C58 42 56 20 70 20', 'measured')],
  'pipe.size': () => [
    path(circle(36, 28, 23), 'vessel-line'),
    path(circle(36, 28, 18), 'bore'),
    path(circle(36, 28, 18), 'vessel-line'),
    ...measured(18, 28, 54, 28),
  ],
  'pipe.length': () => [
    earth('line', [
      [0, 52],
      [22, 52],
      [54, 22],
      [72, 22],
    ]),
    ...pipe(LINE),
    path('M8 38H17L49 8H66', 'measured'),
    path('M5.4 40.6L10.6 35.4M63.4 10.6L68.6 5.4', 'measured tick'),
  ],
  'pipe.elbows': () => [
    ...pipe([
      [8, 48],
      [30, 48],
      [30, 22],
      [52, 22],
      [52, 4],
    ]),
    path(`${circle(30, 48, 6)}${circle(30, 22, 6)}${circle(52, 22, 6)}`, 'measured'),
  ],
  'pipe.checkValve': (word: string | undefined) => riser(word),
  checkValveLoss: () => [...riser('yes'), ...measured(56, 40, 56, 16)],
  feeds: (word: string | undefined) => [...feeds(word)],
  bottomValve: () => [...feeds(), ...valve(45)],
  topValve: () => [...feeds(), ...valve(18)],
  lip: () => [
    path('M34 48H70V56H34Z', 'w1'),
    path('M34 48H70', 'surface'),
    path(box(6, 12, 18, 38), 'w1'),
    path('M6 8V50H24V12H29', 'vessel-line'),
    thin(29, 12, 54, 12),
    ...measured(48, 48, 48, 12),
  ],
  lipWidth: () => [
    path('M10 6V50H62V6H54V16H18V6Z', 'vessel-line'),
    path(box(18, 12, 36, 34), 'w1'),
    path('M18 12H54', 'sheet-edge'),
    ...measured(18, 5, 54, 5),
  ],
  sides: () => [
    path(box(14, 30, 44, 20), 'w1'),
    path('M14 30H58', 'surface'),
    path('M14 14V50H58V30', 'vessel-line'),
    path('M58 30H66', 'vessel-line'),
    thin(14, 14, 44, 14),
    ...measured(38, 30, 38, 14),
  ],
} satisfies Record<string, (word: string | undefined) => Mark[]>;

export const WORKS_PICTURES: Readonly<Record<string, (word: string | undefined) => readonly Mark[]>> = WORKS;
