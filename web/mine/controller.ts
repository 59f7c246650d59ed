import { html, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Keeper } from '../keep/keeper.ts';
import { openDocument } from '../state/document.ts';
import type { Session } from '../state/session.ts';
import type { SketchCleared, SketchTyped } from './edits.ts';

/** Whether the sketch is open beside the answer, and what is typed there put into the file. */
export class MineController implements ReactiveController {
  isOpen = false;

  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #session: Session;
  readonly #keeper: Pick<Keeper, 'add'>;

  constructor(host: ReactiveControllerHost & HTMLElement, session: Session, keeper: Pick<Keeper, 'add'>) {
    this.#host = host;
    this.#session = session;
    this.#keeper = keeper;
    host.addController(this);
  }

  /** A part that is pressed takes the place of the sketch. */
  hostConnected(): void {
    this.#host.addEventListener('part-chosen', this.#close);
  }

  hostDisconnected(): void {
    this.#host.removeEventListener('part-chosen', this.#close);
  }

  /** Opens the sketch; a site that has none stays as it is, and one of one's own is begun. */
  press(): void {
    this.isOpen = true;
    void import('./mine.ts');
    const { doc } = this.#session;
    if (doc && valueAt(doc.now.file, 'sketch') === undefined) void this.#begin();
    this.#host.requestUpdate();
  }

  async #begin(): Promise<void> {
    const { newSketch } = await import('./new-sketch.ts');
    const { display, shown } = this.#session;
    const text = JSON.stringify(newSketch(display ?? shown?.scenario.display ?? 'metric'));
    const doc = openDocument('a-pond-of-my-own', text);
    if (doc) this.#keeper.add(doc);
  }

  readonly #close = (): void => {
    this.isOpen = false;
    this.#host.requestUpdate();
  };

  /** The focus goes back to the press that opened it. */
  #leave(): void {
    this.#close();
    this.#host.shadowRoot?.querySelector<HTMLElement>('button.mine')?.focus();
  }

  #put({ place, label, ...typed }: SketchTyped | SketchCleared): void {
    const { doc } = this.#session;
    const value = 'value' in typed ? typed.value : undefined;
    if (doc) this.#session.edit(withValueAt(doc.now.file, place, value), label);
    // The next step is from this one, also where it is pressed before an answer comes.
    this.#host.requestUpdate();
  }

  view({ scenario }: Answered): TemplateResult {
    const { doc, full, trouble, about } = this.#session;
    return html`<tb-mine .file=${doc?.now.file} .scenario=${scenario} .full=${full} .about=${about}
      .problems=${trouble?.kind === 'refused' ? trouble.problems : []} .display=${scenario.display}
      @sketch-typed=${(event: CustomEvent<SketchTyped>) => this.#put(event.detail)}
      @sketch-cleared=${(event: CustomEvent<SketchCleared>) => this.#put(event.detail)}
      @mine-begun=${() => void this.#begin()} @mine-closed=${() => this.#leave()}></tb-mine>`;
  }
}
