import { html, type TemplateResult } from 'lit';
import { csvText, paint, type Size, svgFile } from '../plots/export.ts';
import { flagWords, headMarks, playheadAt, poleMarks, ringMark } from '../plots/flag-marks.ts';
import type { Token } from '../plots/looks.ts';
import { type Clip, type Mark, words } from '../section/marks.ts';
import type { Plotted } from './plots-model.ts';

/** A drawing to be kept as a file. */
export interface Drawing {
  readonly title: string;
  readonly size: Size;
  readonly marks: readonly Mark[];
  readonly clips: readonly Clip[];
  readonly token: Token;
}

/** Dots of a painted picture for each px of the page. */
const DOTS = 2;

/** A file's name from a title: 'Courtyard spring' is 'courtyard-spring'. */
export const fileName = (title: string): string =>
  title
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

export const svgOf = ({ size, title, marks, clips, token }: Drawing): string =>
  svgFile(size, title, marks, clips, token);

/** The drawing as a picture; undefined where the browser makes none. */
export async function pngOf({ size, marks, clips, token }: Drawing): Promise<Blob | undefined> {
  const canvas = document.createElement('canvas');
  canvas.width = size.width * DOTS;
  canvas.height = size.height * DOTS;
  const brush = canvas.getContext('2d');
  if (!brush) return undefined;
  await document.fonts.ready;
  paint(brush, size, DOTS, marks, clips, token);
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), 'image/png'));
}

/** Room above the flags for the title, px. */
const HEAD = 26;

/** The plots with their title, their flags and their playhead. */
export function drawingOf(plotted: Plotted, moment: number, token: Token): Drawing {
  const { sheet, flags, height, given, subjects } = plotted;
  const { title } = given.scenario;
  const { rail } = sheet.place;
  const head = playheadAt(sheet, ...subjects, moment);
  return {
    title: `${title}: levels and flows`,
    size: { width: given.width, top: -rail - HEAD, height: height + HEAD },
    marks: [
      words(0, -rail - 8, title, 'title'),
      words(given.width, -rail - 8, plotted.momentWords(moment), 'note', 'end'),
      ...poleMarks(flags, sheet),
      ...sheet.marks,
      ...flagWords(flags, sheet.place),
      ...headMarks(sheet, head.x),
      ...head.rings.map((y) => ringMark(head.x, y)),
    ],
    clips: sheet.clips,
    token,
  };
}

/** Presses that save all numbers, the drawing, and a picture of it. */
export function saveView(plotted: Plotted, moment: number, host: Element): TemplateResult {
  const { scenario, series } = plotted.given;
  const name = fileName(scenario.title);
  const drawing = (): Drawing => {
    const look = getComputedStyle(host);
    return drawingOf(plotted, moment, (token) => look.getPropertyValue(token).trim());
  };
  const csv = (): void => save(csvText(series, scenario.starts), 'text/csv', `${name}.csv`);
  const svg = (): void => save(svgOf(drawing()), 'image/svg+xml', `${name}.svg`);
  const png = async (): Promise<void> => {
    const blob = await pngOf(drawing());
    if (blob) save(blob, 'image/png', `${name}.png`);
  };
  return html`<details>
    <summary>save</summary>
    <div class="presses">
      <button @click=${csv}>all numbers as CSV</button>
      <button @click=${svg}>the plots as SVG</button>
      <button @click=${png}>the plots as PNG</button>
    </div>
  </details>`;
}
