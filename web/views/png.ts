import { paintSvg } from './svg-paint.ts';

/** Dots of a painted picture for each px of the page. */
const DOTS = 2;

/** A drawing's SVG text as a picture; undefined where the browser makes none. */
export async function pngOf(text: string): Promise<Blob | undefined> {
  await document.fonts.ready;
  const canvas = document.createElement('canvas');
  if (!paintSvg(text, canvas, DOTS)) return undefined;
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), 'image/png'));
}
