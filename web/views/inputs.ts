import { html, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { JsonSchema } from '../../sim/scenario/fields.ts';
import type { Problem } from '../../sim/scenario/scenario.ts';
import type { Stretch } from '../../sim/studies/aim.ts';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import { dimensionOf, figureOf, placeOf, withSetting } from '../../sim/studies/setting.ts';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import { type Choice, type Dial, dialsFor, type Ruler } from '../state/dials.ts';
import { sampleFor } from '../state/fields.ts';
import { type Part, partAt, partsOfFile } from '../state/part-names.ts';
import type { Session } from '../state/session.ts';
import { asTyped, toFile } from '../state/typed.ts';
import type { Turned } from './dial.ts';
import './dials.ts';
import './part.ts';
import type { Typed } from './part.ts';

/** The dials of the question asked, or the inputs of the part that was pressed, and what they do to the file. */
export class InputsController implements ReactiveController {
  part: Part | undefined;

  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #session: Session;
  readonly #engine: Engine;
  #schema: JsonSchema | undefined;
  #failing = new Map<string, readonly Stretch[]>();
  #turnsOf: unknown;
  #dialsOn: readonly unknown[] = [];
  #dialsNow: readonly Dial[] = [];

  constructor(host: ReactiveControllerHost & HTMLElement, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
    host.addController(this);
  }

  hostConnected(): void {
    this.#host.addEventListener('part-chosen', (event) => this.open((event as CustomEvent<string>).detail));
  }

  /** Opens the inputs of the part at a place of the file. */
  open(place: string): void {
    const file = this.#session.doc?.now.file;
    if (file === undefined) return;
    this.part = partAt(file, place);
    void this.#fetchSchema();
    this.#host.requestUpdate();
  }

  close(): void {
    this.part = undefined;
    this.#failing = new Map();
    this.#turnsOf = undefined;
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
    const { about, isWhole, doc } = this.#session;
    const key = `${about} ${doc?.name}`;
    if (about === 'filling' || !isWhole) return;
    if (!`${this.#turnsOf}`.startsWith(key)) this.#failing = new Map();
    this.#turnsOf = key;
    void this.#findTurns(about);
  }

  async #findTurns(asked: 'stop' | 'filter'): Promise<void> {
    const { text, shown } = this.#session;
    if (!shown) return;
    for (const dial of this.#dials(shown)) {
      if (dial.kind !== 'ruler') continue;
      const { setting, low, high, step, name } = dial;
      const request = { want: 'turns', text, setting, asked, range: [low, high], within: step / 2 } as const;
      const given = await this.#engine.give(request);
      if (given === 'superseded' || text !== this.#session.text) return;
      if (given.kind !== 'turns') continue;
      this.#failing = new Map(this.#failing).set(name, given.failing);
      this.#host.requestUpdate();
    }
  }

  /** The dials as they stand; the same ones until what they stand on changes. */
  #dials({ scenario }: Answered): readonly Dial[] {
    const { doc, base, about } = this.#session;
    if (!doc || !base) return [];
    const on = [scenario, base, about, doc.now.file];
    if (on.some((each, i) => each !== this.#dialsOn[i])) {
      this.#dialsOn = on;
      this.#dialsNow = dialsFor(about, { now: scenario, base, file: doc.now.file });
    }
    return this.#dialsNow;
  }

  #turn({ ruler, to, gesture }: Turned): void {
    const { doc, shown } = this.#session;
    if (!doc || !shown) return;
    const { file } = doc.now;
    const dimension = dimensionOf(ruler.setting);
    const write = asTyped(shown.scenario.display);
    if (typeof to === 'number') {
      const moved = withSetting(file, ruler.setting, to, write);
      this.#session.edit(moved, `${ruler.name} moved`, gesture);
      return;
    }
    const place = placeOf(file, ruler.setting);
    if (place === undefined) return;
    const typed = toFile(to, valueAt(file, place));
    const figure = figureOf(typed, dimension);
    const verbatim = (value: number, before: unknown): unknown =>
      before === valueAt(file, place) && value === figure ? typed : write(value, before, dimension);
    const moved =
      figure === undefined ? withValueAt(file, place, typed) : withSetting(file, ruler.setting, figure, verbatim);
    this.#session.edit(moved, `${ruler.name} ${to}`);
  }

  #choose({ name, word, edits }: Choice['options'][number] & { name: string }): void {
    const { doc } = this.#session;
    if (!doc) return;
    const file = edits.reduce((changed, [place, value]) => withValueAt(changed, place, value), doc.now.file);
    this.#session.edit(file, `${name} ${word}`);
  }

  #type({ place, to }: Typed): void {
    const { doc } = this.#session;
    if (!doc) return;
    const value = typeof to === 'string' ? toFile(to, valueAt(doc.now.file, place)) : to;
    this.#session.edit(withValueAt(doc.now.file, place, value), `${place} edited`);
  }

  #add(place: string): void {
    const { doc, shown } = this.#session;
    if (!doc || !this.#schema) return;
    const assumed = valueAt(shown?.scenario, place);
    const value = ['number', 'boolean', 'string'].includes(typeof assumed)
      ? assumed
      : sampleFor(this.#schema, doc.now.file, place);
    this.#session.edit(withValueAt(doc.now.file, place, value), `${place} added`);
  }

  #wrong(dials: readonly Dial[], problems: readonly Problem[]): Map<string, string> {
    const file = this.#session.doc?.now.file;
    const about = ({ setting }: Ruler): string =>
      problems
        .filter(({ place }) => place === placeOf(file, setting) || place.startsWith(setting.place))
        .map(({ found, wanted }) => `found ${found}; wanted ${wanted}`)
        .join('. ');
    return new Map(dials.flatMap((dial) => (dial.kind === 'ruler' ? [[dial.name, about(dial)]] : [])));
  }

  view(run: Answered): TemplateResult {
    const { doc, trouble, about } = this.#session;
    const problems = trouble?.kind === 'refused' ? trouble.problems : [];
    const dials = this.#dials(run);
    return html`<div class="inputs"
      @dial-turned=${(event: CustomEvent<Turned>) => this.#turn(event.detail)}
      @choice-made=${(event: CustomEvent) => this.#choose(event.detail)}
      @value-typed=${(event: CustomEvent<Typed>) => this.#type(event.detail)}
      @key-added=${(event: CustomEvent<string>) => this.#add(event.detail)}
      @part-closed=${() => this.close()}>
      ${
        this.part
          ? html`<tb-part .of=${this.part} .file=${doc?.now.file} .schema=${this.#schema} .problems=${problems}></tb-part>`
          : html`<tb-dials .dials=${dials} .failing=${about === 'filling' ? null : this.#failing}
            .wrong=${this.#wrong(dials, problems)} .display=${run.scenario.display}></tb-dials>`
      }
      ${this.#otherParts(doc?.now.file)}
    </div>`;
  }

  #otherParts(file: unknown): TemplateResult {
    return html`<details class="others">
      <summary>every other input</summary>
      ${partsOfFile(file).map(
        (part) => html`<button aria-pressed=${part.place === this.part?.place}
          @click=${() => {
            this.part = part;
            void this.#fetchSchema();
            this.#host.requestUpdate();
          }}>${part.name}</button>`,
      )}
    </details>`;
  }
}
