import { html, type TemplateResult } from 'lit';
import type { Display, Subject } from '../engine/protocol.ts';
import { type Document, redoLabel, undoLabel } from '../state/document.ts';
import { type Look, looks } from '../state/look.ts';

/** The three questions people bring. */
export const questions: Record<Subject, string> = {
  stop: 'Does the pond hold what runs back when the pump stops?',
  filling: 'When will it be full?',
  filter: 'What does the water do inside the filter?',
};

export interface Head {
  readonly title: string;
  /** What stands behind the site's name before the looks. */
  readonly sheet: TemplateResult;
  readonly doc: Document | undefined;
  /** Everything is answered that a sheet tells. */
  readonly isWhole: boolean;
  readonly about: Subject;
  readonly display: Display;
  readonly look: Look;
}

export interface HeadDeeds {
  readonly ask: (about: Subject) => void;
  readonly showIn: (display: Display) => void;
  readonly lookIn: (look: Look) => void;
  readonly makeMine: () => void;
  readonly printOut: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly share: () => void;
}

/** Which site, which question, which units; undo and redo. The rest stands behind the site's name. */
export function headView(head: Head, deeds: HeadDeeds): TemplateResult {
  const { display, doc } = head;
  const unit = (each: Display, words: string, says: string): TemplateResult =>
    html`<button aria-pressed=${display === each} aria-label=${says} @click=${() => deeds.showIn(each)}>${words}</button>`;
  const step = (word: string, label: string | undefined, deed: () => void): TemplateResult =>
    html`<button ?disabled=${label === undefined} title=${label ?? ''} @click=${deed}>${word}</button>`;
  return html`<header>
    ${siteView(head, deeds)} <button class="mine" @click=${deeds.makeMine}>make it mine</button> ${questionsView(head, deeds)}
    <div class="presses">
      <div role="group" aria-label="Units">${unit('metric', 'mm', 'millimeters and liters')} ${unit('us', 'in', 'inches and gallons')}</div>
      <div role="group" aria-label="Edits">
        ${step('undo', doc && undoLabel(doc), deeds.undo)} ${step('redo', doc && redoLabel(doc), deeds.redo)}
      </div>
      <button ?disabled=${!doc} title="a link that carries the whole case" @click=${deeds.share}>share</button>
    </div>
  </header>`;
}

function siteView(head: Head, deeds: HeadDeeds): TemplateResult {
  return html`<details class="site">
    <summary><h1>${head.title}</h1></summary>
    <div class="sheet">
      <button ?disabled=${!head.isWhole} @click=${deeds.printOut}>setting-out sheet and owner’s card</button>
      ${head.sheet}
      <div role="group" aria-label="Look">
        <p class="note">The page’s look</p>
        ${looks.map(
          (look) =>
            html`<button aria-pressed=${look === head.look} @click=${() => deeds.lookIn(look)}>${look}</button>`,
        )}
      </div>
    </div>
  </details>`;
}

/** One row of sentences; a narrow page shows the one asked and a press for the others. */
function questionsView({ about }: Head, deeds: HeadDeeds): TemplateResult {
  const ask = (each: Subject) => (event: Event) => {
    deeds.ask(each);
    (event.currentTarget as Element).closest('nav')?.classList.remove('open');
  };
  return html`<nav aria-label="Questions">
    ${(Object.keys(questions) as Subject[]).map(
      (
        each,
      ) => html`<button class=${each === about ? 'asked' : 'other'} aria-current=${each === about ? 'true' : 'false'}
        @click=${ask(each)}>${questions[each]}</button>`,
    )}
    <button class="others" @click=${(event: Event) => (event.currentTarget as Element).closest('nav')?.classList.toggle('open')}>other questions</button>
  </nav>`;
}
