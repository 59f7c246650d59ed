import { type Advances, italic, roman } from './advances.ts';
import type { LineStyle, Measure } from './request.ts';

/** Sizes of the two kinds of line, px. */
export const SIZE: Readonly<Record<LineStyle, number>> = { name: 13, figure: 12.5 };

/** Width of a character the table does not have, in thousandths of the size: no letter of any script is set wider. */
const UNKNOWN = 1000;

function advance({ plain, latin, others }: Advances, character: string): number {
  const code = character.codePointAt(0)!;
  if (code === 0xa0) return plain[0];
  return plain[code - 0x20] ?? latin[code - 0xa1] ?? others[character] ?? UNKNOWN;
}

/**
 * Width in px of a text in STIX Two Text as the page sets it, from the table of advance widths. Kerning, which mostly
 * narrows a text, is left out.
 */
export const measureText: Measure = (text, style) => {
  const table = style === 'name' ? italic : roman;
  let sum = 0;
  for (const character of text) sum += advance(table, character);
  return (sum * SIZE[style]) / 1000;
};
