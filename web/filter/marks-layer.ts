import { type SVGTemplateResult, svg } from 'lit';
import { ref } from 'lit/directives/ref.js';
import { awake } from '../state/player.ts';
import { type Courses, outlineOf, placeOf, type Way } from './hundred.ts';

/** Where motion is unwelcome the marks step on, once so often, ms. */
const STEP = 2000;

/**
 * Lets the hundred marks run: the elements are laid once for a moment, and moved by the screen's own frames, so that the
 * rest of the drawing is not touched.
 */
export class MarksLayer {
  #courses: Courses | undefined;
  #group: SVGGElement | undefined;
  #frame = 0;
  #last = 0;
  #stepped = 0;
  #stands = false;
  readonly #rounds: Record<Way, number> = { through: 0, round: 0 };
  readonly #still = matchMedia('(prefers-reduced-motion: reduce)');

  /** Whether the marks are held where they are. */
  get stands(): boolean {
    return this.#stands;
  }

  stand(stands: boolean): void {
    this.#stands = stands;
    this.#go();
  }

  readonly #attach = (element: Element | undefined): void => {
    this.#group = element as SVGGElement | undefined;
    if (!element) this.stop();
  };

  stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  #go(): void {
    if (this.#frame !== 0) return;
    this.#last = performance.now();
    this.#frame = requestAnimationFrame(this.#run);
  }

  readonly #run = (now: number): void => {
    this.#frame = 0;
    const group = this.#group;
    const courses = this.#courses;
    if (!group?.isConnected || !courses) return;
    const gone = awake(this.#last, now);
    this.#last = now;
    if (!this.#stands) this.#advance(courses, gone);
    place(group, courses, this.#rounds);
    if (!this.#stands) this.#frame = requestAnimationFrame(this.#run);
  };

  #advance({ courses, factor }: Courses, gone: number): void {
    let by = gone;
    if (this.#still.matches) {
      this.#stepped += gone;
      by = this.#stepped >= STEP ? STEP : 0;
      this.#stepped -= by;
    }
    for (const { way, within, beyond } of courses) {
      this.#rounds[way] = (this.#rounds[way] + (0.001 * by * factor) / (within + beyond)) % 1;
    }
  }

  /** The marks of a moment; what they tell stands in their data, so that it can be measured on the page. */
  view(courses: Courses, up: boolean): SVGTemplateResult {
    this.#courses = courses;
    this.#go();
    return svg`<g class="hundred" data-factor=${courses.factor} data-scale=${courses.scale.toFixed(3)} ${ref(this.#attach)}>${courses.courses.map(
      ({ way, marks }) =>
        svg`<g data-way=${way} data-count=${marks.length}>${marks.map(
          () => svg`<path class="mark ${way}" d=${outlineOf(way, up, marks.length)}></path>`,
        )}</g>`,
    )}</g>`;
  }
}

function place(group: SVGGElement, { courses }: Courses, rounds: Record<Way, number>): void {
  courses.forEach((course, i) => {
    const elements = group.children[i]?.children;
    if (!elements) return;
    course.marks.forEach((mark, j) => {
      const { x, y, within } = placeOf(course, mark, rounds[course.way]);
      const element = elements[j];
      element?.setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
      element?.classList.toggle('beyond', !within);
    });
  });
}
