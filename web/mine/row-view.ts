/** One number of the sketch: its picture, its question, its fields and presses, and how it stands. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Problem } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import type { Mark } from '../section/marks.ts';
import { typeset } from '../state/typed.ts';
import { typing } from '../views/typing.ts';
import { HEIGHT, WIDTH } from './picture-marks.ts';
import { pictureOf } from './pictures.ts';
import type { Figure, Row } from './rows.ts';
import { bandWords, figureText, type Sketching, type Standing, standingOf, wordOf } from './standing.ts';
import { isWrong, wrongWords } from './wrong.ts';

export interface RowDeeds {
  readonly type: (row: Row, figure: Figure, field: HTMLInputElement) => void;
  readonly step: (row: Row, figure: Figure, by: number) => void;
  readonly press: (row: Row, word: string, says: string) => void;
  readonly clear: (row: Row) => void;
  readonly next: (event: KeyboardEvent) => void;
  /** The pump by its curve or its box, a point more or less. */
  readonly pump: (row: Row, deed: 'curve' | 'box' | 'more' | 'fewer') => void;
}

export interface RowSeen {
  readonly site: Sketching;
  readonly problems: readonly Problem[];
  /** The answer rests on it most. */
  readonly most: boolean;
}

export function rowView(row: Row, seen: RowSeen, deeds: RowDeeds): TemplateResult {
  const { site, problems } = seen;
  const { key, asks } = row.number;
  const standing = standingOf(site, row);
  const wrong = wrongWords(row, site.file, problems, site.display);
  const single = row.figures.length === 1 && row.words.length === 0;
  const id = `field ${row.place}${row.figures[0]?.at ?? ''}`;
  const about = `about ${key}`;
  const lines = row.figures.map((figure) => lineView(row, figure, seen, deeds, about));
  const body = html`${lines}${choicesView(row, standing, site, deeds)}${key === 'pump' ? pumpView(row, site, deeds) : nothing}
    <p id=${about} class=${wrong ? 'wrong' : 'about'} role=${wrong ? 'alert' : nothing}>${wrong || aboutWords(row, standing, seen)}</p>`;
  return html`<div class="row ${standing}" data-place=${row.place}>
    ${picture(pictureOf(key, wordOf(site, row)) ?? [])}
    ${
      single
        ? html`<div><label class="asks" for=${id}>${asks}</label>${body}</div>`
        : html`<div role="group" aria-label=${asks}><span class="asks" aria-hidden="true">${asks}</span>${body}</div>`
    }
  </div>`;
}

function lineView(
  row: Row,
  figure: Figure,
  { site, problems }: RowSeen,
  deeds: RowDeeds,
  about: string,
): TemplateResult {
  const id = `field ${row.place}${figure.at}`;
  const called = figure.name ? `${row.name}, ${figure.name}` : row.name;
  const stepper = (by: number, sign: string, says: string): TemplateResult =>
    html`<button class="step" aria-label="${called}: one step ${says}" @click=${() => deeds.step(row, figure, by)}>${sign}</button>`;
  return html`<div class=${figure.name ? 'line named' : 'line'}>
    ${figure.name ? html`<label for=${id}>${figure.name}</label>` : nothing}
    <input id=${id} type="text" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next"
      .value=${typing(figureText(site, row, figure))} aria-invalid=${isWrong(row, figure, problems)} aria-describedby=${about}
      @change=${(event: Event) => deeds.type(row, figure, event.target as HTMLInputElement)} @keydown=${deeds.next} />
    ${stepper(-1, '−', 'less')}${stepper(1, '+', 'more')}
  </div>`;
}

function choicesView(row: Row, standing: Standing, site: Sketching, deeds: RowDeeds): TemplateResult | typeof nothing {
  if (row.words.length === 0) return nothing;
  const word = wordOf(site, row);
  const known = standing === 'given';
  const offered = row.words.filter(([each]) => row.number.key !== 'pipe.size' || each === word || isOf(each, site));
  return html`<div class="choices">${offered.map(
    ([
      each,
      says,
    ]) => html`<button aria-pressed=${known && each === word} ?data-stands=${each === word} @keydown=${deeds.next}
      @click=${() => deeds.press(row, each, says)}>${typeset(says)}</button>`,
  )}<button aria-pressed=${!known} @keydown=${deeds.next} @click=${() => deeds.clear(row)}>not known</button></div>`;
}

const isOf = (size: string, { display }: Sketching): boolean => size.endsWith('in') === (display === 'us');

function pumpView(row: Row, { file }: Sketching, deeds: RowDeeds): TemplateResult {
  const press = (deed: Parameters<RowDeeds['pump']>[1], says: string): TemplateResult =>
    html`<button @click=${() => deeds.pump(row, deed)}>${says}</button>`;
  return html`<div class="choices">${
    Array.isArray(valueAt(file, row.place))
      ? html`${press('more', 'one point more')}${press('fewer', 'one point fewer')}${press('box', 'by its box')}`
      : press('curve', 'by its curve')
  }</div>`;
}

function aboutWords(row: Row, standing: Standing, { site, most }: RowSeen): string {
  switch (standing) {
    case 'example':
      return 'An example’s: type your own.';
    case 'unused':
      return 'Nothing rests on it here.';
    case 'assumed': {
      const word = row.words.find(([each]) => each === wordOf(site, row))?.[1];
      const band = bandWords(site, row);
      return [
        `assumed${word ? ` ${typeset(word)}` : ''}`,
        band && `${band}${row.bandOf ?? ''}`,
        most ? 'the answer rests on it most' : '',
      ]
        .filter(Boolean)
        .join(', ');
    }
    default:
      return '';
  }
}

const picture = (marks: readonly Mark[]): TemplateResult =>
  html`<svg class="picture" width=${WIDTH} height=${HEIGHT} viewBox="0 0 ${WIDTH} ${HEIGHT}" aria-hidden="true">${marks.map(markElement)}</svg>`;

const markElement = (mark: Mark): SVGTemplateResult | typeof nothing =>
  mark.kind === 'path'
    ? svg`<path class=${mark.look} d=${mark.d} stroke-width=${mark.stroke ?? nothing}></path>`
    : nothing;
