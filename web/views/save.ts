/** Files to be kept: their names, their pictures, and handing them to the browser. */
import { paintSvg } from './svg-paint.ts';

/** Dots of a painted picture for each px of the page. */
const DOTS = 2;

/** A file's name from words: 'Courtyard spring' is 'courtyard-spring'. */
export const fileName = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'site';

export function save(content: Blob | string, type: string, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  // Some browsers read the file only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** A drawing's SVG text as a picture; undefined where the browser makes none. */
export async function pngOf(text: string): Promise<Blob | undefined> {
  await document.fonts.ready;
  const canvas = document.createElement('canvas');
  if (!paintSvg(text, canvas, DOTS)) return undefined;
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), 'image/png'));
}
