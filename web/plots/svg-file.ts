/** The plots as a drawing that needs nothing else. */

import type { Clip, Mark, PathMark, TextMark } from '../section/marks.ts';
import { colorOf, FAMILY, type Look, lookOf, type Token } from './looks.ts';

export interface Size {
  /** x of the left edge. */
  readonly left: number;
  readonly width: number;
  /** y of the upper edge. */
  readonly top: number;
  readonly height: number;
}

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
  { left, width, top, height }: Size,
  title: string,
  marks: readonly Mark[],
  clips: readonly Clip[],
  token: Token = () => undefined,
): string {
  const defs = clips.map(({ id, d }) => `<clipPath id="${id}"><path d="${d}"/></clipPath>`).join('');
  const body = marks.map((mark) => (mark.kind === 'path' ? pathText(mark, token) : textText(mark, token))).join('\n');
  const family = escaped(FAMILY);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${left} ${top} ${width} ${height}" role="img" font-family="${family}"><title>${escaped(title)}</title><defs>${defs}</defs>
<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${colorOf('paper', token)}"/>
${body}
</svg>
`;
}
