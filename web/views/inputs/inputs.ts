import { html, nothing, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { JsonSchema } from '../../../sim/scenario/fields.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';
import { valueAt, withValueAt } from '../../../sim/studies/place.ts';
import type { Engine } from '../../engine/client.ts';
import type { Answered, Display } from '../../engine/protocol.ts';
import { type DialSet, dialsFor } from '../../state/dials.ts';
import { isSame, sameDials } from '../../state/dials-same.ts';
import { chosen, moved, typedInto } from '../../state/dials-turned.ts';
import { wrongWords } from '../../state/dials-wrong.ts';
import type { Document } from '../../state/document.ts';
import { expanded, grafted } from '../../state/graft.ts';
import { type Part, partAt, partsOfFile } from '../../state/part-names.ts';
import type { Session } from '../../state/session.ts';
import { toFile } from '../../state/typed.ts';
import type { Turned } from './dial.ts';
import { TurnSearch } from './dial-turns.ts';
import type { Chosen } from './dials.ts';
import './dials.ts';
import type { Typed } from './part.ts';

/** The dials of the question asked, or the inputs of the part that was pressed, and what they do to the file. */
export class InputsController implements ReactiveController {
  part: Part | undefined;

  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #session: Session;
  readonly #engine: Engine;
  #schema: JsonSchema | undefined;
  readonly #turns: TurnSearch;
  /** The site as it was opened. */
  #base: Scenario | undefined;
  #dialsOn: readonly unknown[] = [];
  #dialsNow: DialSet = { shown: [], more: [] };
  #wrongNow: ReadonlyMap<string, string> = new Map();
  #more = false;
  /** What was typed into dials, by place: its unit stays. */
  #typed: ReadonlyMap<string, string> = new Map();
  /** The dial turned last, and the file it made. */
  #turned: { readonly name: string; readonly file: unknown } | undefined;

  constructor(host: ReactiveControllerHost & HTMLElement, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
    this.#turns = new TurnSearch(session, engine, () => host.requestUpdate());
    host.addController(this);
  }

  hostConnected(): void {
    this.#host.addEventListener('part-chosen', (event) => this.open((event as CustomEvent<string>).detail));
  }

  /** Opens the inputs of the part at a place of the file. */
  open(place: string): void {
    const file = this.#doc?.now.file;
    if (file !== undefined) this.#edit(partAt(file, place));
  }

  /** What shows a part's inputs, and every key there is, are fetched when the first part is opened. */
  #edit(part: Part): void {
    this.part = part;
    void import('./part.ts');
    void this.#fetchSchema();
    this.#host.requestUpdate();
  }

  /** The document as its parts read; of a sketch what it came to in the last good answer. */
  get #doc(): Document | undefined {
    const { doc, shown } = this.#session;
    return doc && expanded(doc, shown?.plain ?? null);
  }

  /** The file with what was changed in the parts. */
  #back(changed: unknown): unknown {
    const { doc, shown } = this.#session;
    return grafted(doc?.now.file, shown?.plain ?? null, changed);
  }

  close(): void {
    this.part = undefined;
    this.#host.requestUpdate();
  }

  async #fetchSchema(): Promise<void> {
    while (!this.#schema) {
      const given = await this.#engine.give({ want: 'schema' });
      if (given !== 'superseded' && given.kind !== 'schema') return;
      if (given !== 'superseded') this.#schema = given.schema;
    }
    this.#host.requestUpdate();
  }

  /** Once an answer stands in full, the places where it turns are looked for, dial by dial. */
  answered(): void {
    const { shown } = this.#session;
    if (!shown) return;
    const { shown: few, more } = this.#dials(shown);
    void this.#turns.search(this.#more ? [...few, ...more] : few);
  }

  /** Another site was opened. */
  #begin(base: Scenario): void {
    this.#base = base;
    this.#typed = new Map();
    this.#turned = undefined;
    this.#turns.forget();
  }

  /** The dials as they stand; each the same one until it changes. */
  #dials({ scenario }: Answered): DialSet {
    const { base, about } = this.#session;
    const doc = this.#doc;
    if (!doc || !base) return this.#dialsNow;
    const { file } = doc.now;
    if (base !== this.#base) this.#begin(base);
    const on = [scenario, base, about, file, this.#typed];
    if (on.some((each, i) => each !== this.#dialsOn[i])) {
      this.#dialsOn = on;
      const opened = doc.past[0]?.file ?? file;
      this.#dialsNow = sameDials(
        this.#dialsNow,
        dialsFor(about, { now: scenario, base, file, opened, typed: this.#typed }),
      );
    }
    return this.#dialsNow;
  }

  #turn({ ruler, to, gesture }: Turned): void {
    const doc = this.#doc;
    if (!doc) return;
    const typed = typeof to === 'string' ? typedInto(doc, ruler, to) : undefined;
    const file = this.#back(typeof to === 'number' ? moved(doc, ruler, to) : (typed?.file ?? doc.now.file));
    if (typed && typeof typed.value === 'string') this.#typed = new Map(this.#typed).set(typed.place, typed.value);
    this.#turned = { name: ruler.name, file };
    this.#session.edit(file, `${ruler.name} ${typed ? to : 'moved'}`, gesture);
  }

  #choose({ choice: { name }, option: { word, edits } }: Chosen): void {
    const doc = this.#doc;
    if (!doc) return;
    const file = this.#back(chosen(doc.now.file, edits));
    this.#turned = { name, file };
    this.#session.edit(file, `${name} ${word}`);
  }

  #type({ place, to }: Typed): void {
    const doc = this.#doc;
    if (!doc) return;
    const value = typeof to === 'string' ? toFile(to, valueAt(doc.now.file, place)) : to;
    if (typeof value === 'string') this.#typed = new Map(this.#typed).set(place, value);
    this.#session.edit(this.#back(withValueAt(doc.now.file, place, value)), `${place} edited`);
  }

  async #add(place: string): Promise<void> {
    const { sampleFor } = await import('../../state/fields.ts');
    const { shown } = this.#session;
    const doc = this.#doc;
    if (!doc || !this.#schema) return;
    const assumed = valueAt(shown?.scenario, place);
    const value = ['number', 'boolean', 'string'].includes(typeof assumed)
      ? assumed
      : sampleFor(this.#schema, doc.now.file, place);
    this.#session.edit(this.#back(withValueAt(doc.now.file, place, value)), `${place} added`);
  }

  /** What is wrong, by the dial's name; the same map until that changes. */
  #wrong({ shown, more }: DialSet, display: Display): ReadonlyMap<string, string> {
    const { doc, trouble } = this.#session;
    const problems = trouble?.kind === 'refused' ? trouble.problems : [];
    const file = doc?.now.file;
    const last = this.#turned?.file === file ? this.#turned?.name : undefined;
    const found = new Map<string, string>();
    for (const dial of problems.length > 0 ? [...shown, ...more] : []) {
      const words = wrongWords(dial, file, problems, display, dial.name === last);
      if (words !== '') found.set(dial.name, words);
    }
    if (!isSame([...found], [...this.#wrongNow])) this.#wrongNow = found;
    return this.#wrongNow;
  }

  /** @param dialed whether the question's dials stand here; what fills a pond has its own */
  view(run: Answered, dialed = true): TemplateResult {
    const { doc, trouble, about } = this.#session;
    const { display } = run.scenario;
    const problems = trouble?.kind === 'refused' ? trouble.problems : [];
    const dials = this.#dials(run);
    const turned = this.#turned?.file === doc?.now.file ? this.#turned?.name : undefined;
    return html`<div class="inputs"
      @dial-turned=${(event: CustomEvent<Turned>) => this.#turn(event.detail)}
      @choice-made=${(event: CustomEvent<Chosen>) => this.#choose(event.detail)}
      @more-opened=${(event: CustomEvent<boolean>) => {
        this.#more = event.detail;
        this.answered();
      }}
      @value-typed=${(event: CustomEvent<Typed>) => this.#type(event.detail)}
      @key-added=${(event: CustomEvent<string>) => void this.#add(event.detail)}
      @part-closed=${() => this.close()}>
      ${
        this.part
          ? html`<tb-part .of=${this.part} .file=${this.#doc?.now.file} .schema=${this.#schema} .problems=${problems}></tb-part>`
          : dialed
            ? html`<tb-dials .dials=${dials} .turns=${about === 'filling' ? null : this.#turns.told(turned)}
            .wrong=${this.#wrong(dials, display)} .display=${display}></tb-dials>`
            : nothing
      }
      ${this.#otherParts(this.#doc?.now.file)}
    </div>`;
  }

  #otherParts(file: unknown): TemplateResult {
    return html`<details class="others">
      <summary>every other input</summary>
      ${partsOfFile(file).map(
        (part) => html`<button aria-pressed=${part.place === this.part?.place}
          @click=${() => this.#edit(part)}>${part.name}</button>`,
      )}
    </details>`;
  }
}
