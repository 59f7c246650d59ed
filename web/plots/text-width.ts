import { measureText, SIZE } from '../section/labels/measure.ts';

/** Width in px of a text of the plots at a size in px, roman or italic. */
export function textWidth(text: string, size: number, italic = false): number {
  const style = italic ? 'name' : 'figure';
  return (measureText(text, style) * size) / SIZE[style];
}
