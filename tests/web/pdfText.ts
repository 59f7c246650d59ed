/** What a printed file holds, read by a reader of its own. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Printed {
  readonly pages: number;
  /** Width and height of the first page, mm. */
  readonly size: readonly [width: number, height: number];
  /** All words that begin within the margins, single spaces between: what was cut off at them is on no page. */
  readonly text: string;
  /** Height of the greatest letters, pt. */
  readonly largest: number;
}

const POINT = 25.4 / 72;
/** pt; 8 mm. */
const MARGIN = 8 / POINT;

export async function readPdf(file: Uint8Array): Promise<Printed> {
  const opened = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  const pdf = await opened.promise;
  const pages = await Promise.all(Array.from({ length: pdf.numPages }, (_, i) => pdf.getPage(i + 1)));
  const [left, top, right, bottom] = pages[0].view;
  let largest = 0;
  const texts = await Promise.all(
    pages.map(async (page) => {
      const { items } = await page.getTextContent();
      const isOnPaper = ([, , , , x, y]: number[]): boolean => x >= left && x < right - MARGIN && y > top && y < bottom;
      for (const item of items) if ('str' in item) largest = Math.max(largest, item.height);
      return items.map((item) => ('str' in item && isOnPaper(item.transform) ? item.str : '')).join(' ');
    }),
  );
  await opened.destroy();
  return {
    pages: pages.length,
    size: [(right - left) * POINT, (bottom - top) * POINT],
    largest,
    text: texts.join(' ').replace(/\s+/g, ' '),
  };
}
