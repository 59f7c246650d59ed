/** What moves in the cut of a filling pond: water to a level, the hose, tide marks and their words. */
import { makeStorage, volumeAt } from '../../sim/laws/storage.ts';
import { formatVolume } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { standingMarks } from '../section/basin-water.ts';
import { floorOf, leftAt, rightAt } from '../section/cut.ts';
import { veilMarks } from '../section/gravel.ts';
import { closed, type Mark, path, px, segment, words } from '../section/marks.ts';
import type { FillCut } from './cut.ts';
import { seated, type TideMark } from './tide.ts';

/** Tide marks keep this far apart, px. */
const GAP = 17;

export interface Standing {
  /** Level of the water, m, what it is called there, and what the pond holds, m³. */
  readonly level: number;
  readonly words: string;
  readonly runs: boolean;
  readonly s: Scenario;
}

/** Everything that moves: water, hose, tide marks and their words. */
export function movingMarks(view: FillCut, tide: readonly TideMark[], now: Standing): Mark[] {
  const { scale, cut, edge } = view;
  const level = Math.min(now.level, edge);
  const [left, right] = [leftAt(cut, edge), rightAt(cut, edge)];
  const water = { level, floor: floorOf(cut), left, right, surface: [left, right], clip: 'fill-pond' } as const;
  const { displaced } = now.s.pond;
  return [
    ...standingMarks(water, scale),
    ...view.gravel,
    ...veilMarks(cut, displaced, level, scale, 'fill-pond'),
    ...hoseMarks(view, level, now.runs),
    path(segment(scale.x(left), scale.y(edge), scale.x(right), scale.y(edge)), 'edge-line'),
    ...tideLines(view, tide, level),
    ...nowMarks(view, tide, now, level),
  ];
}

const [TIP, DROP] = [0.34, 22];

/** The hose comes over the left bank; its end stays above the edge. */
function hoseMarks({ scale, cut, edge }: FillCut, level: number, runs: boolean): Mark[] {
  const x = scale.x(cut.left + TIP * cut.width);
  const end = scale.y(edge) - DROP;
  const d = `M-4 ${px(end - 16)}C${px(0.3 * x)} ${px(end - 52)} ${px(0.92 * x)} ${px(end - 50)} ${px(x)} ${px(end)}`;
  const jet = runs ? [path(segment(x, end, x + 1.5, scale.y(level)), 'jet', { stroke: 2 })] : [];
  return [
    path(d, 'hose-wall'),
    path(d, 'hose-bore'),
    ...jet,
    path(segment(x + 9, end, x + 9, scale.y(edge)) + segment(x + 6, end + 3, x + 12, end - 3), 'thin'),
  ];
}

/** Ends of a tide mark, px: within the banks at its level, clear of them. */
function ends({ scale, cut }: FillCut, level: number): readonly [number, number] {
  return [scale.x(leftAt(cut, level)) + 8, scale.x(rightAt(cut, level)) - 8];
}

function tideLines(view: FillCut, tide: readonly TideMark[], level: number): Mark[] {
  const { scale } = view;
  return seated(tide, scale.y, GAP).flatMap((mark) => {
    const [from, to] = ends(view, mark.level);
    const y = scale.y(mark.level);
    const look = mark.kind === 'full' ? 'tide full' : mark.kind === 'opened' ? 'tide opened' : 'tide';
    const ink = inkOn(level - mark.level, view);
    const short = mark.kind === 'opened' ? 44 : undefined;
    const lines =
      short === undefined ? segment(from, y, to, y) : segment(from, y, from + short, y) + segment(to - short, y, to, y);
    const text = `tide-text ${mark.kind === 'full' ? 'full ' : ''}${ink ?? ''}`.trim();
    return [
      path(lines, `${look}${level > mark.level ? ` under ${ink ?? ''}` : ''}`),
      ...(ink === undefined
        ? []
        : [
            words(from + 2, y - 4, mark.clock, text, 'start' as const),
            words(to - 2, y - 4, mark.below, text, 'end' as const),
          ]),
    ];
  });
}

/** Ink for words whose foot lies so far under the surface, m: none on the middle tint, where neither is read. */
function inkOn(under: number, { scale }: FillCut): 'dry' | 'shallow' | 'deep' | undefined {
  const tall = 15 / (scale.k * scale.a);
  if (under <= 0) return 'dry';
  if (under < tall + 0.004) return under < 0.002 ? 'dry' : 'shallow';
  if (under < 0.3) return 'shallow';
  return under - tall > 0.45 ? 'deep' : undefined;
}

function nowMarks(view: FillCut, tide: readonly TideMark[], { words: said, s }: Standing, level: number): Mark[] {
  const { scale, cut, edge } = view;
  const [x, y] = [scale.width / 2, scale.y(level)];
  const held = volumeAt(makeStorage(s.pond.profile, s.pond.displaced), level);
  const middle = (level + floorOf(cut)) / 2;
  const ink = inkOn(level - middle, view);
  const wide = (rightAt(cut, middle) - leftAt(cut, middle)) * scale.a;
  const top = Math.max(...tide.map((mark) => mark.level), level);
  // Between the next mark and the water, and under the edge's own name.
  const room = (level >= top || y - scale.y(top) > 26) && y - scale.y(edge) > 34;
  return [
    path(
      closed([
        [x, y - 1],
        [x - 6, y - 11],
        [x + 6, y - 11],
      ]),
      'pointer',
    ),
    ...(room ? [words(x, y - 15, said, 'now', 'middle')] : []),
    ...(ink && ink !== 'dry' && wide > 130
      ? [words(x, scale.y(middle) + 4, `${formatVolume(held, s.display)} in the pond`, `held ${ink}`, 'middle')]
      : []),
    words(scale.x(rightAt(cut, edge)) - 12, scale.y(edge) - 4, 'edge', 'note', 'end'),
  ];
}
