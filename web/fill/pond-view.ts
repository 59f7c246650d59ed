import { html, nothing, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { instantOf } from '../../sim/fill/clock.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import { formatLength } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { keySteps } from '../state/key-steps.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { Width } from '../views/width.ts';
import { type CourseScale, courseMarks, courseScale, TALL } from './course.ts';
import { type FillCut, fillCut } from './cut.ts';
import { clipsView, marksView } from './marks-view.ts';
import { movingMarks } from './moving.ts';
import { levelAt, tideMarks } from './tide.ts';
import { type FillSeen, sayer } from './words.ts';

/** The clock on the wall moves the pointer this often, ms. */
const TICK = 30_000;
/** An arrow key's step along the ruler, as a share of it, and how many of them a page key takes. */
const [STEP, LEAP] = [1 / 60, 10];

/** The pond with its tide marks, and level against time as a ruler that is moved by hand, by keys, or by the clock. */
export class PondView implements ReactiveController {
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #moved: (t: number) => void;
  /** Where the hand put the pointer; undefined: at the moment drawn elsewhere, or the clock's own. */
  #t: number | undefined;
  /** The moment drawn elsewhere, as it was seen last: once it moves, it leads. */
  #elsewhere: number | undefined;
  readonly #width: Width;
  #held = false;
  #cut: { readonly of: readonly unknown[]; readonly cut: FillCut } | undefined;
  #tick: ReturnType<typeof setInterval> | undefined;

  constructor(host: ReactiveControllerHost & HTMLElement, moved: (t: number) => void) {
    this.#host = host;
    this.#width = new Width(host, '.cut');
    this.#moved = moved;
    host.addController(this);
  }

  hostConnected(): void {
    this.#tick = setInterval(() => this.#host.requestUpdate(), TICK);
  }

  hostDisconnected(): void {
    clearInterval(this.#tick);
  }

  view(s: Scenario, seen: FillSeen, moment: number | undefined): TemplateResult | typeof nothing {
    const { plan } = seen.planned;
    if (plan === null) return nothing;
    const width = Math.max(280, this.#width.px);
    const view = this.#cutOf(s, seen.edge, width);
    if (moment !== this.#elsewhere) this.#t = undefined;
    this.#elsewhere = moment;
    const isNow = moment === undefined && this.#t === undefined;
    const t = this.#clamped(plan, this.#t ?? moment ?? nowIn(plan, seen.zone));
    const { level } = levelAt(plan, t);
    const clock = sayer(seen)(t);
    const below = `${trueFractions(formatLength(Math.max(0, seen.edge - level), s.display))} below the edge`;
    const { height } = view.scale;
    const runs = plan.full === null || t < plan.full.t;
    const marks = movingMarks(view, tideMarks(seen), { level, words: isNow ? `now, ${clock}` : clock, runs, s });
    const label = `The pond at ${clock}: water ${below}`;
    return html`<div class="cut">
        <svg role="img" aria-label=${label} width=${width} height=${height} viewBox="0 0 ${width} ${height}">
          ${clipsView(view.clips)}${marksView(view.still)}${marksView(marks)}
        </svg>
      </div>
      ${this.#ruler(s, seen, plan, t, `${clock}, ${below}`, width)}
      <p class="note told">${[view.scaleWords, 'the hose’s end stays above the edge'].filter(Boolean).join('; ')}</p>`;
  }

  #cutOf(s: Scenario, edge: number, width: number): FillCut {
    const of = [s.pond, edge, width];
    if (!this.#cut || of.some((each, i) => each !== this.#cut?.of[i])) this.#cut = { of, cut: fillCut(s, edge, width) };
    return this.#cut.cut;
  }

  #clamped({ series, open }: FillPlan, t: number): number {
    return Math.min(series.t.at(-1) ?? t, Math.max(open?.t ?? 0, t));
  }

  #ruler(s: Scenario, { zone }: FillSeen, plan: FillPlan, t: number, says: string, width: number): TemplateResult {
    // The cut reaches into the page's margins on a phone; the ruler does not.
    const wide = Math.max(240, Math.min(width, this.#host.clientWidth));
    const scale = courseScale(plan, wide);
    return html`<div class="course-box" role="slider" tabindex="0" aria-label="moment of the fill" aria-valuemin=${scale.from}
      aria-valuemax=${scale.to} aria-valuenow=${Math.round(t)} aria-valuetext=${says}
      @pointerdown=${(event: PointerEvent) => this.#down(event, scale)} @pointermove=${(event: PointerEvent) => this.#held && this.#drag(event, scale)}
      @pointerup=${() => this.#letGo()} @pointercancel=${() => this.#letGo()}
      @keydown=${(event: KeyboardEvent) => this.#keys(event, scale, t)}>
      <svg aria-hidden="true" width=${wide} height=${TALL} viewBox="0 0 ${wide} ${TALL}">${marksView(courseMarks({ plan, display: s.display, zone, t }, scale, wide))}</svg>
    </div>`;
  }

  #down(event: PointerEvent, scale: CourseScale): void {
    if (event.button !== 0) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#held = true;
    this.#drag(event, scale);
  }

  #drag(event: PointerEvent, scale: CourseScale): void {
    const { left } = (event.currentTarget as Element).getBoundingClientRect();
    this.#put(scale.t(event.clientX - left));
  }

  #letGo(): void {
    this.#held = false;
  }

  #keys(event: KeyboardEvent, { from, to }: CourseScale, t: number): void {
    const steps = keySteps(event.key, LEAP);
    if (steps !== undefined) this.#put(Math.min(to, Math.max(from, t + steps * STEP * (to - from))));
    else if (event.key === 'Home') this.#put(from);
    else if (event.key === 'End') this.#put(to);
    else return;
    event.preventDefault();
  }

  #put(t: number): void {
    this.#t = t;
    this.#moved(t);
    this.#host.requestUpdate();
  }
}

/** The present moment of the phone's clock, s from the plan's start. */
const nowIn = ({ starts }: FillPlan, zone: string | undefined): number =>
  (Date.now() - instantOf(starts, 0, zone ?? 'UTC')) / 1000;
