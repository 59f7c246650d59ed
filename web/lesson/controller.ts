import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Keeper } from '../keep/keeper.ts';
import type { Session } from '../state/session.ts';
import type { Step } from './steps.ts';

/** Whether the lesson is going on, and at which step; each step is put into the site as one edit. */
export class LessonController {
  /** undefined: no lesson. */
  #step: number | undefined;
  #steps: readonly Step[] = [];
  /** The site it is held on, by its name. */
  #site = '';

  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #keeper: Pick<Keeper, 'choose'>;
  readonly #engine: Engine;

  constructor(host: ReactiveControllerHost, session: Session, keeper: Pick<Keeper, 'choose'>, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#keeper = keeper;
    this.#engine = engine;
  }

  readonly #begin = async (): Promise<void> => {
    const [{ STEPS, TEACHING_SITE }] = await Promise.all([import('./steps.ts'), import('./lesson.ts')]);
    this.#keeper.choose({ kind: 'demo', name: TEACHING_SITE });
    this.#steps = STEPS;
    this.#site = TEACHING_SITE;
    this.#step = 0;
    this.#host.requestUpdate();
  };

  #go(step: number): void {
    const taken = this.#steps[step];
    if (!taken) return;
    this.#step = step;
    this.#session.put(taken.edits, `lesson: ${taken.title.toLowerCase()}`);
    this.#host.requestUpdate();
  }

  /** Another site is to come, or the lesson is over: the site stays as its last step left it. */
  leave(): void {
    this.#step = undefined;
    this.#host.requestUpdate();
  }

  async #print(): Promise<void> {
    const { openHandout } = await import('./handout.ts');
    await openHandout(this.#engine, this.#session.display);
  }

  view({ scenario, balance }: Answered): TemplateResult | typeof nothing {
    if (this.#step === undefined)
      return this.#session.about === 'filter'
        ? html`<p class="folds"><button class="lesson" @click=${() => void this.#begin()}>a lesson on channeling, in seven steps</button></p>`
        : nothing;
    // As long as the site is on its way, the one before it stands on the page.
    if (this.#session.name !== this.#site) return nothing;
    return html`<tb-lesson .step=${this.#step} .scenario=${scenario} .balance=${balance}
      @step-taken=${(event: CustomEvent<number>) => this.#go(event.detail)}
      @lesson-left=${() => this.leave()} @lesson-printed=${() => void this.#print()}></tb-lesson>`;
  }
}
