/** What the plots are saved as: a table of all columns, a drawing that needs nothing else, a painted picture. */

import type { Series } from '../../sim/results/answer.ts';
import { csvLines } from '../../sim/results/csv.ts';
import type { Clip, Mark, PathMark, TextMark } from '../section/marks.ts';
import { colorOf, FAMILY, type Look, lookOf, type Token } from './looks.ts';

export interface Size {
  readonly width: number;
  /** y of the upper edge. */
  readonly top: number;
  readonly height: number;
}

/** All columns of a run, RFC 4180. */
export const csvText = (series: Series, starts: string): string => [...csvLines(series, starts)].join('');

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPES[sign]!);

/** A mark's look, and whether it stands on the paler ground of the opened minutes. */
function lookParts(look: string): { look: Look; opened: boolean } {
  const [name = '', ...more] = look.split(' ');
  return { look: lookOf(name), opened: more.includes('in') };
}

const weightOf = (token: Token): number => Number(token('--line')) || 1;

function pathText({ d, look, clip }: PathMark, token: Token): string {
  const { fill, stroke, width = 1, dash } = lookParts(look).look;
  const line = stroke
    ? ` stroke="${colorOf(stroke, token)}" stroke-width="${width * weightOf(token)}" stroke-linejoin="round"`
    : '';
  const dashes = dash ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  const clipped = clip ? ` clip-path="url(#${clip})"` : '';
  return `<path d="${d}" fill="${fill ? colorOf(fill, token) : 'none'}"${line}${dashes}${clipped}/>`;
}

function textText({ x, y, text, look, at }: TextMark, token: Token): string {
  const { look: set, opened } = lookParts(look);
  const { fill = 'ink', size = 12, italic, bold, halo } = set;
  const ground = halo
    ? ` stroke="${colorOf(opened ? 'paper2' : 'paper', token)}" stroke-width="${halo}" stroke-linejoin="round" paint-order="stroke"`
    : '';
  const style = `${italic ? ' font-style="italic"' : ''}${bold ? ' font-weight="700"' : ''}`;
  return `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${at}" font-size="${size}" fill="${colorOf(fill, token)}"${style}${ground}>${escaped(text)}</text>`;
}

/** Marks as the text of an SVG file: every color and width written in, the paper under them. */
export function svgFile(
  { width, top, height }: Size,
  title: string,
  marks: readonly Mark[],
  clips: readonly Clip[],
  token: Token = () => undefined,
): string {
  const defs = clips.map(({ id, d }) => `<clipPath id="${id}"><path d="${d}"/></clipPath>`).join('');
  const body = marks.map((mark) => (mark.kind === 'path' ? pathText(mark, token) : textText(mark, token))).join('\n');
  const family = escaped(FAMILY);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 ${top} ${width} ${height}" role="img" font-family="${family}"><title>${escaped(title)}</title><defs>${defs}</defs>
<rect y="${top}" width="${width}" height="${height}" fill="${colorOf('paper', token)}"/>
${body}
</svg>
`;
}

/** What painting needs of a canvas's context. */
export type Brush = Pick<
  CanvasRenderingContext2D,
  | 'save'
  | 'restore'
  | 'scale'
  | 'translate'
  | 'clip'
  | 'fill'
  | 'stroke'
  | 'fillRect'
  | 'fillText'
  | 'strokeText'
  | 'setLineDash'
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'font'
  | 'textAlign'
>;

/** Paints marks, `times` as large; the context's own font family is the page's. */
export function paint(
  brush: Brush,
  { width, top, height }: Size,
  times: number,
  marks: readonly Mark[],
  clips: readonly Clip[],
  token: Token,
): void {
  brush.save();
  brush.scale(times, times);
  brush.translate(0, -top);
  brush.fillStyle = colorOf('paper', token);
  brush.fillRect(0, top, width, height);
  brush.lineJoin = 'round';
  for (const mark of marks) {
    if (mark.kind === 'path') paintPath(brush, mark, clips, token);
    else paintText(brush, mark, token);
  }
  brush.restore();
}

function paintPath(brush: Brush, { d, look, clip }: PathMark, clips: readonly Clip[], token: Token): void {
  const { fill, stroke, width = 1, dash } = lookParts(look).look;
  const outline = clips.find(({ id }) => id === clip);
  brush.save();
  if (outline) brush.clip(new Path2D(outline.d));
  const shape = new Path2D(d);
  if (fill) {
    brush.fillStyle = colorOf(fill, token);
    brush.fill(shape);
  }
  if (stroke) {
    brush.strokeStyle = colorOf(stroke, token);
    brush.lineWidth = width * weightOf(token);
    brush.setLineDash([...(dash ?? [])]);
    brush.stroke(shape);
  }
  brush.restore();
}

const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

function paintText(brush: Brush, { x, y, text, look, at }: TextMark, token: Token): void {
  const { look: set, opened } = lookParts(look);
  const { fill = 'ink', size = 12, italic, bold, halo } = set;
  brush.font = `${italic ? 'italic ' : ''}${bold ? '700 ' : ''}${size}px ${FAMILY}`;
  brush.textAlign = ALIGN[at];
  if (halo) {
    brush.strokeStyle = colorOf(opened ? 'paper2' : 'paper', token);
    brush.lineWidth = halo;
    brush.setLineDash([]);
    brush.strokeText(text, x, y);
  }
  brush.fillStyle = colorOf(fill, token);
  brush.fillText(text, x, y);
}
