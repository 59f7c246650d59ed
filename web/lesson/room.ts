/** The lesson as it goes on: at which step, and on what its sentences are told. */
import { html, nothing, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Named } from '../keep/address.ts';
import type { Keeper } from '../keep/keeper.ts';
import { idIn } from '../keep/shelf.ts';
import { demoText } from '../sites.ts';
import type { Document } from '../state/document.ts';
import type { Session } from '../state/session.ts';
import './lesson.ts';
import type { Taking } from './lesson.ts';
import { fileAt, TEACHING_SITE } from './settings.ts';
import { isLessonAlone, type Standing, standingOf, stepLabel } from './standing.ts';
import { STEPS } from './steps.ts';
import { type Taught, taughtOf } from './taught.ts';

interface Held {
  readonly session: Session;
  readonly keeper: Keeper;
  readonly engine: Engine;
  /** Address of the site that was open before. */
  readonly before: string;
  /** The lesson is over; true: its site stays open. */
  readonly leave: (stays: boolean) => void;
}

interface Shown extends Standing {
  readonly doc: Document | undefined;
  readonly run: Answered;
  readonly taught: Taught | undefined;
}

const TO: Readonly<Record<Taking, number>> = { next: 1, back: -1, again: 0 };

export class LessonRoom {
  readonly before: string;
  /** The step that was taken last. */
  step: number;
  /** Its site is open; until then the one before it stands on the page. */
  hasArrived: boolean;

  readonly #held: Held;
  readonly #base: unknown;
  #isNew: boolean;
  #shown: Shown | undefined;

  /** @param step goes on from there; left out: begins */
  constructor(held: Held, base: unknown, step: number | undefined) {
    this.before = held.before;
    this.#held = held;
    this.#base = base;
    this.#isNew = step === undefined;
    this.hasArrived = step !== undefined;
    this.step = step ?? 0;
  }

  /** The whole site is put as the step has it: what was changed besides is one undo away. */
  #take(taking: Taking): void {
    const { session } = this.#held;
    const to = this.step + TO[taking];
    const at = STEPS[to];
    if (!at || !session.doc) return;
    this.step = to;
    session.edit(fileAt(this.#base, at.sets, session.doc.now.file), stepLabel(at.title));
  }

  /**
   * What the lesson alone made of its site is not kept: each time it was held, one more would stand on the shelf. Once
   * another site is on its way.
   */
  letGo(doc: Document | undefined, named: Named): void {
    if (named.kind !== 'own' || !doc || !isLessonAlone(doc)) return;
    try {
      const key = Object.keys(localStorage).find((each) => idIn(each) === named.id);
      if (key !== undefined) localStorage.removeItem(key);
    } catch {
      // A browser that keeps nothing has nothing to let go.
    }
  }

  async #print(): Promise<void> {
    const { openHandout } = await import('./handout.ts');
    await openHandout(this.#held.engine, this.#base, this.#held.session.display);
  }

  /** What is told stays as it was until the site as it stands has answered. */
  #told(run: Answered): Shown | undefined {
    const { doc, isOld } = this.#held.session;
    const before = this.#shown;
    if (!doc || isOld || (before?.doc === doc && before.run === run)) return before;
    const standing = standingOf(doc, this.#base, STEPS, this.step);
    this.step = standing.step;
    this.#shown = { ...standing, doc, run, taught: taughtOf(run.scenario, run.balance) };
    return this.#shown;
  }

  view(run: Answered): TemplateResult | typeof nothing {
    const { named } = this.#held.keeper;
    this.hasArrived ||= named.kind === 'demo' && named.name === TEACHING_SITE;
    const told = this.hasArrived ? this.#told(run) : undefined;
    if (!told) return nothing;
    return html`<tb-lesson .step=${told.step} .on=${told.isOn} .taught=${told.taught} .begun=${this.#isNew}
      @title-read=${() => {
        this.#isNew = false;
      }}
      @step-taken=${({ detail }: CustomEvent<Taking>) => this.#take(detail)}
      @lesson-left=${({ detail }: CustomEvent<boolean>) => this.#held.leave(detail)}
      @lesson-printed=${() => void this.#print()}></tb-lesson>`;
  }
}

/** The lesson with its site's file as it comes; undefined where that cannot be fetched. */
export async function openLesson(held: Held, step: number | undefined): Promise<LessonRoom | undefined> {
  try {
    return new LessonRoom(held, JSON.parse(await demoText(TEACHING_SITE)), step);
  } catch {
    return undefined;
  }
}
