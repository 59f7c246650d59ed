/** The pond cut across for its filling: earth, liner, stones, rock and gravel. */
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { type Cut, floorOf, leftAt, leftBank, makeCut, rightAt, rightBank, type Spot } from '../section/cut.ts';
import { stipple } from '../section/earth.ts';
import { fillingMarks } from '../section/gravel.ts';
import { type Clip, closed, type Mark, path, rounded, segment } from '../section/marks.ts';
import { exaggeration, type Scale } from '../section/scale.ts';
import { stoneMarks } from '../section/stone.ts';

export interface FillCut {
  readonly scale: Scale;
  readonly cut: Cut;
  readonly clips: readonly Clip[];
  /** What stands still behind the water: earth, liner, stones. */
  readonly still: readonly Mark[];
  /** Rock and gravel in it. */
  readonly gravel: readonly Mark[];
  /** 'heights drawn twice as tall as lengths' */
  readonly scaleWords: string;
  readonly edge: number;
}

/** Bank at either side of the pond, px, room above the edge for the hose, and below the floor. */
const BANK = { narrow: 40, wide: 64 };
const ABOVE = 78;
const BELOW = 30;
/** Height of the pond itself on the sheet, px, at most and where it can be had. */
const TALL = { most: 236, least: 120 };
/** Single rocks take up less of their layer than this: the marks have their room. */
const PACKED = 0.3;
const isGravel = ({ fraction }: { readonly fraction: number }): boolean => fraction >= PACKED;
const TIMES = [1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6];

export function fillCut(s: Scenario, edge: number, width: number): FillCut {
  const { profile } = s.pond;
  const bank = width < 460 ? BANK.narrow : BANK.wide;
  const cut = makeCut(profile, 0, 0.5);
  const deep = edge - floorOf(cut);
  const a = Math.min((width - 2 * bank) / cut.width, TALL.most / deep);
  const k = TIMES.reduce((best, times) => (times * a * deep <= TALL.most + 1e-9 ? times : best), 1);
  const from = cut.width / 2 - width / (2 * a);
  const x = (station: number): number => a * (station - from);
  const y = (z: number): number => ABOVE + k * a * (edge - z);
  const height = Math.ceil(ABOVE + Math.max(TALL.least, k * a * deep) + BELOW);
  const scale: Scale = {
    a,
    k,
    width,
    height,
    from,
    to: from + width / a,
    left: 0,
    right: width,
    top: ABOVE,
    bottom: height - BELOW,
    strip: width < 460,
    closeUp: false,
    hatched: false,
    x,
    y,
    at: ([station, z]) => [x(station), y(z)],
  };
  const left = leftBank(cut, edge);
  const right = rightBank(cut, edge);
  const basin = [...left, ...right].map(scale.at);
  const earth: Spot[] = [[from, edge], ...left, ...right, [scale.to, edge]];
  const clips = [{ id: 'fill-pond', d: closed(basin) }];
  return {
    scale,
    cut,
    clips,
    edge,
    scaleWords: exaggeration(k),
    still: stillMarks(scale, cut, earth, edge),
    gravel: fillingMarks('fill', cut, s.pond.displaced.filter(isGravel), edge, scale, 'fill-pond'),
  };
}

function stillMarks(scale: Scale, cut: Cut, earth: readonly Spot[], edge: number): Mark[] {
  const basin = earth.slice(1, -1).map(scale.at);
  const rim = scale.y(edge);
  const ends = [scale.x(leftAt(cut, edge)), scale.x(rightAt(cut, edge))] as const;
  return [
    path(stipple([...earth], scale), 'stipple'),
    path(segment(0, rim, ends[0], rim) + segment(ends[1], rim, scale.width, rim), 'ground'),
    path(rounded(basin, 4), 'liner'),
    ...edgeStone('left', ends[0], rim),
    ...edgeStone('right', ends[1], rim),
  ];
}

/** A flat stone that holds the liner's edge. */
function edgeStone(side: 'left' | 'right', x: number, rim: number): Mark[] {
  const [left, right] = side === 'left' ? [x - 34, x + 5] : [x - 5, x + 34];
  return stoneMarks(`edge, ${side}`, { left, right, top: rim - 11, bottom: rim });
}
