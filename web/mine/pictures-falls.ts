/** Small pictures of what is measured at the falls, the stream, the hose and the sky. */
import { circle, curve, type Mark, type Pixel, path } from '../section/marks.ts';
import { stoneMarks } from '../section/stone.ts';
import { cut, measured, thin } from './picture-marks.ts';

const POOL: readonly Pixel[] = [
  [12, 28],
  [24, 12],
  [44, 12],
  [60, 24],
  [52, 44],
  [28, 46],
];

/** A stone from the front, a sheet of water over it. */
const front = (name: string, left: number, right: number, top: number): Mark[] => [
  ...stoneMarks(name, { left, right, top, bottom: top + 13 }),
  path(`M${left + 2} ${top - 2.5}H${right - 2}V50H${left + 2}Z`, 'sheet'),
  path(`M${left + 2} 50V${top - 2.5}H${right - 2}V50`, 'sheet-edge'),
];

const BED: readonly Pixel[] = [
  [0, 16],
  [12, 17],
  [62, 38],
  [62.1, 48],
  [72, 48],
];

const stream = (): Mark[] => [
  path('M12 13L62 34V38L12 17Z', 'w1'),
  path('M12 13L62 34', 'surface'),
  ...cut('stream', BED),
];

const bowl = (level: number): Mark[] => [
  path(`M10 ${level}H62V46H10Z`, 'w1'),
  path(`M10 ${level}H62`, 'surface'),
  path('M10 12V46H62V12', 'liner'),
];

const tap = (flows: boolean): Mark[] => [
  path('M2 12H20V18', 'pipe-line'),
  ...(flows ? [path('M20 19V28', 'jet')] : []),
];

const afloat = (word: string | undefined): Mark[] => [
  ...bowl(28),
  ...tap(word !== 'none'),
  ...(word === 'none' ? [] : [path('M20 15L44 27', 'thin'), path(circle(46, 28, 6), 'measured float')]),
];

const FALLS = {
  stone: () => [...front('main', 10, 62, 20), thin(10, 20, 10, 6), thin(62, 20, 62, 6), ...measured(10, 9, 62, 9)],
  sideStone: () => [
    ...front('main', 4, 38, 26),
    ...front('side', 41, 60, 18),
    thin(38, 26, 70, 26),
    thin(60, 18, 70, 18),
    ...measured(66, 26, 66, 18),
  ],
  splash: () => [
    ...stoneMarks('splash', { left: 4, right: 30, top: 16, bottom: 30 }),
    path('M2 13H26C38 14 42 28 44 46H39C37 30 34 19 26 16H2Z', 'sheet'),
    path('M2 13H26C38 14 42 28 44 46', 'sheet-edge'),
    path('M30 46q4 -7 8 0M44 46q4 -9 9 0M52 46q3 -6 7 0', 'measured'),
    path('M4 46H68', 'surface'),
  ],
  poolArea: () => [
    path(curve(POOL, 0.2, true), 'w1'),
    path('M22 40L44 14M30 44L54 18M40 44L58 26', 'hatch'),
    path(curve(POOL, 0.2, true), 'measured'),
  ],
  poolEdge: () => [
    path('M14 26H44V46H14Z', 'w1'),
    path('M14 26H44', 'surface'),
    ...stoneMarks('pool', { left: 42, right: 60, top: 28, bottom: 46 }),
    ...cut('pool', [
      [0, 12],
      [14, 12],
      [14.1, 46],
      [72, 46],
    ]),
    thin(14, 12, 34, 12),
    thin(24, 28, 42, 28),
    ...measured(28, 28, 28, 12),
  ],
  stream: () => [...stream(), ...measured(16, 6, 66, 27)],
  slope: () => [...stream(), thin(12, 17, 68, 17), ...measured(66, 38, 66, 17)],
  bucket: () => [
    path('M2 8H34q6 0 6 6', 'pipe-line'),
    path('M40 15V30', 'jet'),
    path('M22.5 26H57.5L53 50H27Z', 'w1'),
    path('M20 16L26.5 50H53.5L60 16', 'vessel-line'),
    path('M22 26H58', 'measured'),
  ],
  autofill: (word: string | undefined) => afloat(word),
  autofillFlow: () => [...afloat('pond'), path('M20 18V28', 'measured')],
  climate: () => [...bowl(27), path('M10 18H62', 'reached'), ...measured(36, 27, 36, 18)],
} satisfies Record<string, (word: string | undefined) => Mark[]>;

export const FALLS_PICTURES: Readonly<Record<string, (word: string | undefined) => readonly Mark[]>> = FALLS;
