import { html, type TemplateResult } from 'lit';
import { momentText } from '../../../sim/quantity/index.ts';
import { type Column, csvLines } from '../../../sim/results/csv.ts';
import type { Giving } from '../../fill/ask.ts';
import { flagWords, headMarks, playheadAt, poleMarks, ringMark } from '../../plots/flag-marks.ts';
import type { Token } from '../../plots/looks.ts';
import { svgFile } from '../../plots/svg-file.ts';
import { words } from '../../section/marks.ts';
import { pngOf } from '../png.ts';
import { fileName, save } from '../save.ts';
import type { Plotted } from './model.ts';

/** Room above the flags for the title, and at both sides, px. */
const HEAD = 34;
const SIDE = 16;

/** The plots with their title, their flags and their playhead, as the text of an SVG file. */
export function plotsSvg(plotted: Plotted, moment: number, token: Token): string {
  const { sheet, flags, height, given, subjects } = plotted;
  const { title } = given.scenario;
  const { rail } = sheet.place;
  const head = playheadAt(sheet, ...subjects, moment);
  const marks = [
    words(0, -rail - 8, title, 'title'),
    words(given.width, -rail - 8, plotted.momentWords(moment), 'note', 'end'),
    ...poleMarks(flags, sheet),
    ...sheet.marks,
    ...flagWords(flags, sheet.place),
    ...headMarks(sheet, head.x),
    ...head.rings.map((y) => ringMark(head.x, y)),
  ];
  const size = { left: -SIDE, width: given.width + 2 * SIDE, top: -rail - HEAD, height: height + HEAD };
  return svgFile(size, `${title}: levels and flows`, marks, sheet.clips, token);
}

export interface Saved {
  readonly plotted: Plotted;
  readonly moment: number;
  /** Name of the check whose trial it is; '' for the run. */
  readonly trial: string;
  /** The drawing as the text of an SVG file; undefined where none stands beside the plots. */
  readonly drawing: (() => string) | undefined;
  /** What knows more of the run than is drawn. */
  readonly engine: Giving | undefined;
  /** Whose look is taken. */
  readonly host: Element;
}

/** 'courtyard-spring-2031-06-01-120000-plots.svg'. */
function nameOf({ plotted, moment, trial }: Saved, what: string, ending: string): string {
  const { title, starts } = plotted.given.scenario;
  const clock = momentText(starts, moment).replaceAll(':', '').replace('T', ' ');
  return `${fileName([title, trial && `trial ${trial}`, clock, what].join(' '))}.${ending}`;
}

/** What the water of the run brings along; a trial is of the water alone. */
async function brought({ plotted, trial, engine }: Saved): Promise<readonly Column[]> {
  const { scenario, series } = plotted.given;
  if (trial !== '' || !engine) return [];
  for (;;) {
    const given = await engine.give({ want: 'brought', scenario, t: series.t });
    if (given !== 'superseded') return given.kind === 'brought' ? given.columns : [];
  }
}

/** Presses that save all numbers, and drawing and plots as SVG and as a picture. */
export function saveView(saved: Saved): TemplateResult {
  const { plotted, moment, drawing, host } = saved;
  const { scenario, series } = plotted.given;
  const look = (name: string): string => getComputedStyle(host).getPropertyValue(name).trim();
  const csv = async (): Promise<void> => {
    const lines = csvLines(series, scenario.starts, await brought(saved));
    save([...lines].join(''), 'text/csv', nameOf(saved, 'numbers', 'csv'));
  };
  const presses = (what: string, text: () => string): TemplateResult => {
    const svg = (): void => save(text(), 'image/svg+xml', nameOf(saved, what, 'svg'));
    const png = async (): Promise<void> => {
      const picture = await pngOf(text());
      if (picture) save(picture, 'image/png', nameOf(saved, what, 'png'));
    };
    return html`<button @click=${svg}>the ${what} as SVG</button> <button @click=${png}>the ${what} as PNG</button>`;
  };
  return html`<div class="presses">
    <button @click=${csv}>all numbers as CSV</button>
    ${presses('plots', () => plotsSvg(plotted, moment, look))} ${drawing && presses('drawing', drawing)}
  </div>`;
}
