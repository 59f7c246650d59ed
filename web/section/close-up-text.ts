/** Words of a close-up: a name with its figure under it, and the room that words take. */
import { measureText } from './labels/measure.ts';
import { type TextMark, words } from './marks.ts';

/** Room that words take on the sheet, px. */
export interface TextBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A name, and its figure on the line under it. */
export const named = (
  name: string,
  figure: string,
  x: number,
  y: number,
  at: TextMark['at'],
  on = '',
): [TextMark, TextMark] => [
  words(x, y, name, `label name${on}`, at),
  words(x, y + 16, figure, `label figure${on}`, at),
];

/** Above and below a line of words, px. */
const ASCENT = 11;
const DESCENT = 4;

export function boxOfText({ x, y, text, look, at }: TextMark): TextBox {
  const wide = measureText(text, look.includes('name') ? 'name' : 'figure');
  const left = at === 'end' ? x - wide : at === 'middle' ? x - wide / 2 : x;
  return { left, right: left + wide, top: y - ASCENT, bottom: y + DESCENT };
}

/** Whether two boxes share room. */
export const meet = (a: TextBox, b: TextBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
