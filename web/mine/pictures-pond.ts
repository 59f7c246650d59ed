/** Small pictures of what is measured at the pond and its intake. */
import { box, circle, closed, curve, type Mark, type Pixel, path } from '../section/marks.ts';
import { stoneMarks } from '../section/stone.ts';
import { cut, measured, pebbles, thin } from './picture-marks.ts';

const FREE: readonly Pixel[] = [
  [10, 22],
  [22, 8],
  [40, 12],
  [56, 8],
  [62, 22],
  [52, 38],
  [34, 34],
  [18, 38],
];

function outline(word: string): string {
  if (word === 'rectangle') return box(10, 9, 52, 28);
  if (word === 'oval') return 'M10 23a26 14.5 0 1 0 52 0a26 14.5 0 1 0 -52 0Z';
  return curve(FREE, 0.18, true);
}

const plan = (word = 'freeform'): Mark[] => [path(outline(word), 'w1'), path(outline(word), 'liner')];

const BASIN: readonly Pixel[] = [
  [0, 12],
  [10, 12],
  [10.1, 27],
  [22, 27],
  [22.1, 46],
  [60, 46],
  [60.1, 12],
  [72, 12],
];

/** The pond cut across: water in bands of equal depth. */
const basin = (name: string, inside: readonly Mark[] = []): Mark[] => [
  path(box(10, 17, 50, 10), 'w1'),
  path(box(22, 27, 38, 10), 'w2'),
  path(box(22, 37, 38, 9), 'w3'),
  path('M10 17H60', 'surface'),
  ...inside,
  ...cut(name, BASIN),
];

/** A bank close to, its liner turned up at the edge. */
const bank = (name: string): Mark[] => {
  const line: Pixel[] = [
    [34, 50],
    [40, 16],
    [72, 16],
  ];
  return [path('M4 36H36.6L34 50H4Z', 'w1'), path('M4 36H36.6', 'surface'), ...cut(name, line)];
};

/** The intake from the front: an opening in a wall, its screen. */
const screen = (inside: readonly Mark[] = []): Mark[] => [
  path(box(4, 10, 64, 38), 'vessel-line'),
  path(box(14, 18, 44, 20), 'w1'),
  path([20, 26, 32, 38, 44, 50].map((x) => `M${x} 18V38`).join(''), 'screen'),
  ...inside,
  path(box(14, 18, 44, 20), 'vessel-line'),
];

const leaf = (x: number, y: number): Mark => path(`M${x} ${y}q5 -6 11 0q-6 6 -11 0`, 'leaf');

const POND = {
  length: () => [...plan(), thin(10, 24, 10, 52), thin(62, 24, 62, 52), ...measured(10, 48, 62, 48)],
  width: () => [...plan(), thin(20, 8, 6, 8), thin(20, 38, 6, 38), ...measured(6, 8, 6, 38)],
  depth: () => [...basin('depth'), ...measured(44, 17, 44, 46)],
  plan: (word: string | undefined) => [...plan(word), path(outline(word ?? 'freeform'), 'measured')],
  shelf: () => [...basin('shelf'), ...measured(16, 17, 16, 27), ...measured(10, 32, 22, 32)],
  rock: () =>
    basin('rock', [
      ...stoneMarks('rock one', { left: 24, right: 38, top: 34, bottom: 46 }),
      ...stoneMarks('rock two', { left: 44, right: 59, top: 30, bottom: 46 }),
      ...stoneMarks('rock three', { left: 11, right: 21, top: 20, bottom: 27 }),
    ]),
  gravel: () => {
    const rows = [44, 40.4].flatMap((y, k) => Array.from({ length: 8 }, (_, i): Pixel => [25 + 2 * k + 4.2 * i, y]));
    return [
      ...basin('gravel', [pebbles(rows)]),
      thin(58, 38.4, 68, 38.4),
      thin(58, 46, 68, 46),
      ...measured(66, 38.4, 66, 46),
    ];
  },
  edge: () => [...bank('edge'), thin(20, 16, 40, 16), ...measured(24, 36, 24, 16)],
  intakeWidth: () => [...screen(), ...measured(14, 5, 58, 5)],
  intakeLip: () => [
    path('M2 14H34V44H2Z', 'w1'),
    path('M2 14H34', 'surface'),
    path('M36 2V10M36 28V52', 'vault-wall'),
    path(
      closed([
        [38, 20],
        [66, 20],
        [66, 52],
        [38, 52],
      ]),
      'w2',
    ),
    thin(22, 28, 36, 28),
    ...measured(26, 14, 26, 28),
  ],
  blockage: () => screen([leaf(16, 32), leaf(24, 35), leaf(20, 25), path(circle(33, 34, 1.4), 'leaf')]),
} satisfies Record<string, (word: string | undefined) => Mark[]>;

export const POND_PICTURES: Readonly<Record<string, (word: string | undefined) => readonly Mark[]>> = POND;
