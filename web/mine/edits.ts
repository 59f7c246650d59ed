/** What a typed text, a step or a press does to a sketch: the place of the file and what is put there. */
import { isObject } from '../../sim/scenario/fields.ts';
import { valueAt } from '../../sim/studies/place.ts';
import type { Figure, Row } from './rows.ts';
import { figureValue, type Sketching } from './standing.ts';
import { asValue, siOf, stepped, textIn } from './units.ts';

/** A number was given. */
export interface SketchTyped {
  readonly place: string;
  readonly value: unknown;
  /** As 'undo' names it. */
  readonly label: string;
}

/** A number was taken back: what is assumed stands for it again. */
export interface SketchCleared {
  readonly place: string;
  readonly label: string;
}

export type Edit = SketchTyped | SketchCleared;

/** A text typed into a figure's field; an empty one takes the number back. */
export function typedEdit(site: Sketching, row: Row, figure: Figure, text: string): Edit {
  if (text.trim() === '') {
    const alone = row.number.key === 'pump' ? `${row.place}${figure.at}` : row.place;
    return { place: alone, label: `${row.name} taken back` };
  }
  return edit(site, row, figure, asValue(text, figure.units[site.display]), text);
}

/** A press of a stepper; undefined where there is nothing to step from. */
export function steppedEdit(site: Sketching, row: Row, figure: Figure, by: number): SketchTyped | undefined {
  const from = figureValue(site, row, figure);
  if (from === undefined) return undefined;
  const range = figure.at === '' ? row.number.range : undefined;
  const unit = figure.units[site.display];
  const to = stepped(unit, figure.dimension, from, by, range ?? [0, Number.POSITIVE_INFINITY]);
  return edit(site, row, figure, to, String(to));
}

/** A word pressed. */
export const pressedEdit = (row: Row, word: string, says: string): SketchTyped => ({
  place: row.place,
  value: word,
  label: `${row.name} ${says}`,
});

function edit(site: Sketching, row: Row, figure: Figure, value: unknown, text: string): SketchTyped {
  const label = `${row.name} ${text}`;
  const { key } = row.number;
  if (key === 'shelf') return { place: row.place, value: shelves(site, row, figure, value), label };
  if (key === 'bucket')
    return {
      place: row.place,
      value: row.figures.map((each) => (each === figure ? value : textOf(site, row, each))),
      label,
    };
  return { place: `${row.place}${figure.at}`, value, label };
}

/** A shelf takes both its figures: the other one as it stands, as assumed, or as wide as it is deep. */
function shelves(site: Sketching, row: Row, figure: Figure, value: unknown): unknown {
  const raw = valueAt(site.file, row.place);
  const shelf = Object.fromEntries(
    row.figures.map((each) => [each.at.slice(1), each === figure ? value : (textOf(site, row, each) ?? value)]),
  );
  return Array.isArray(raw) ? [shelf, ...raw.slice(1)] : shelf;
}

function textOf(site: Sketching, row: Row, figure: Figure): unknown {
  const raw = valueAt(site.file, row.place);
  const one = Array.isArray(raw) && row.number.key === 'shelf' ? raw[0] : raw;
  const own = Array.isArray(one) || isObject(one) ? valueAt(one, figure.at.replace(/^\./, '')) : undefined;
  if (own !== undefined) return own;
  const value = figureValue(site, row, figure);
  return value === undefined ? undefined : textIn(figure.units[site.display], figure.dimension, value);
}

/** The pump by three points of its curve, the box's two and the one between on a parabola. */
export function curveEdit({ file, display }: Sketching, row: Row): SketchTyped {
  const [flow, head] = row.figures as [Figure, Figure];
  const value = (figure: Figure, otherwise: number): number =>
    siOf(valueAt(file, `${row.place}${figure.at}`), figure.dimension) ?? otherwise;
  const [most, high] = [value(flow, 0.003), value(head, 4)];
  const points = [
    [0, high],
    [most / 2, (3 / 4) * high],
    [most, 0],
  ].map(([q, h]) => pointText(flow, head, display, q as number, h as number));
  return { place: row.place, value: points, label: 'the pump by its curve' };
}

const pointText = (flow: Figure, head: Figure, display: Sketching['display'], q: number, h: number): string[] => [
  textIn(flow.units[display], 'flow', q),
  textIn(head.units[display], 'length', h),
];

/** The pump by the two maxima of its curve again. */
export function boxEdit({ file }: Sketching, row: Row): SketchTyped {
  const points = valueAt(file, row.place) as readonly (readonly unknown[])[];
  return {
    place: row.place,
    value: { flow: points.at(-1)?.[0], head: points[0]?.[1] },
    label: 'the pump by its box',
  };
}

/** One point more, halfway to the last one, or the last but one away. */
export function pointEdit({ file, display }: Sketching, row: Row, more: boolean): SketchTyped | undefined {
  const points = valueAt(file, row.place) as readonly (readonly unknown[])[];
  const [before, last] = points.slice(-2);
  if (!before || !last || (!more && points.length < 3)) return undefined;
  const [flow, head] = row.figures as [Figure, Figure];
  const between = (k: 0 | 1, { dimension }: Figure): number =>
    ((siOf(before[k], dimension) ?? 0) + (siOf(last[k], dimension) ?? 0)) / 2;
  const point = pointText(flow, head, display, between(0, flow), between(1, head));
  const value = more ? [...points.slice(0, -1), point, last] : [...points.slice(0, -2), last];
  return { place: row.place, value, label: `a point of the curve ${more ? 'added' : 'taken away'}` };
}
