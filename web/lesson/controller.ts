import { html, nothing, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import { addressOf, namedBy } from '../keep/address.ts';
import type { Keeper } from '../keep/keeper.ts';
import type { Session } from '../state/session.ts';
import { recall, remember } from './memory.ts';
import type { LessonRoom } from './room.ts';

type Host = ReactiveControllerHost & { readonly renderRoot: ParentNode };

const tab = (): Storage => sessionStorage;

/** Whether the lesson is going on, over a reload too; what it is held with is fetched when it is begun. */
export class LessonController implements ReactiveController {
  /** undefined: no lesson. */
  #room: LessonRoom | undefined;
  /** The one that went on before the page was loaded anew. */
  #kept = recall(tab);
  /** Address of the site that was left last, as long as the press of the lesson is to have the focus after it. */
  #left: string | undefined;

  readonly #host: Host;
  readonly #session: Session;
  readonly #keeper: Keeper;
  readonly #engine: Engine;

  constructor(host: Host, session: Session, keeper: Keeper, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#keeper = keeper;
    this.#engine = engine;
    host.addController(this);
  }

  get #address(): string {
    const { named } = this.#keeper;
    return named.kind === 'nothing' ? `#${this.#session.name}` : addressOf(named);
  }

  hostUpdated(): void {
    const room = this.#room;
    if (room?.hasArrived) remember(tab, { address: this.#address, step: room.step, before: room.before });
    if (this.#left === undefined || this.#left === this.#address || !this.#session.shown) return;
    this.#left = undefined;
    this.#host.renderRoot.querySelector<HTMLElement>('button.lesson')?.focus();
  }

  /** Another site is to come, or the lesson is over. */
  leave(): void {
    this.#room = undefined;
    this.#kept = undefined;
    remember(tab, undefined);
    this.#host.requestUpdate();
  }

  /** undefined where it cannot be fetched. */
  async #fetch(before: string, step?: number): Promise<LessonRoom | undefined> {
    const [session, keeper, engine] = [this.#session, this.#keeper, this.#engine];
    const { openLesson } = await import('./room.ts');
    return openLesson({ session, keeper, engine, before, leave: (stays) => this.#leaveFor(before, stays) }, step);
  }

  readonly #begin = async (): Promise<void> => {
    const room = await this.#fetch(this.#address);
    // Where its site cannot be fetched, the keeper says so.
    this.#keeper.choose({ kind: 'demo', name: 'teaching-filter' });
    this.#room = room;
    this.#host.requestUpdate();
  };

  async #resume(before: string, step: number): Promise<void> {
    const room = await this.#fetch(before, step);
    this.#room ??= room;
    this.#host.requestUpdate();
  }

  #leaveFor(before: string, stays: boolean): void {
    const [from, room, { doc }, { named }] = [this.#address, this.#room, this.#session, this.#keeper];
    this.leave();
    const isThere = stays || before === from;
    this.#left = isThere ? '' : from;
    if (isThere) return;
    this.#keeper.choose(namedBy(before));
    room?.letGo(doc, named);
  }

  view(run: Answered): TemplateResult | typeof nothing {
    if (this.#session.about !== 'filter') return nothing;
    const kept = this.#kept;
    this.#kept = undefined;
    if (kept && kept.address === this.#address) void this.#resume(kept.before, kept.step);
    return (
      this.#room?.view(run) ??
      html`<p class="folds"><button class="lesson" @click=${this.#begin}>a lesson on channeling, in seven steps</button></p>`
    );
  }
}
