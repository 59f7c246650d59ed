import type { Place } from '../../plots/place.ts';
import type { Axis, Window } from '../../plots/time-axis.ts';
import { brushed, wheelFactor, zoomed } from '../../plots/zoom.ts';

/** What hands act on, as it stands. */
export interface Held {
  readonly axis: Axis;
  readonly place: Place;
}

export interface Deeds {
  readonly held: () => Held | undefined;
  readonly move: (t: number) => void;
  readonly open: (window: Window) => void;
  /** px of a stretch being brushed over the bar; undefined: none. */
  readonly brushing: (stretch: readonly [number, number] | undefined) => void;
}

/** A finger has to go this far across, px, before it moves the playhead: until then it may be scrolling the page. */
const SLOP = 6;

const across = (event: PointerEvent | WheelEvent): number =>
  event.clientX - (event.currentTarget as HTMLElement).getBoundingClientRect().left;

/** Hands on the two plots: one finger or the mouse drags the playhead, two pinch, a wheel zooms. */
export class PlotHand {
  readonly #deeds: Deeds;
  /** px across of each pointer that is down. */
  readonly #down = new Map<number, number>();
  #start = 0;
  #dragging = false;
  #pinched = false;

  constructor(deeds: Deeds) {
    this.#deeds = deeds;
  }

  readonly down = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button !== 0) return;
    const target = event.currentTarget as HTMLElement;
    target.setPointerCapture(event.pointerId);
    if (this.#down.size === 0) {
      this.#start = across(event);
      this.#pinched = false;
      this.#dragging = event.pointerType === 'mouse';
    }
    this.#down.set(event.pointerId, across(event));
    if (this.#down.size > 1) this.#pinched = true;
    else if (this.#dragging) this.#move(across(event));
  };

  readonly moved = (event: PointerEvent): void => {
    const before = this.#down.get(event.pointerId);
    if (before === undefined) return;
    const x = across(event);
    if (this.#pinched) {
      const other = [...this.#down].find(([id]) => id !== event.pointerId)?.[1];
      if (other !== undefined) this.#pinch(before, x, other);
    } else if (this.#dragging || Math.abs(x - this.#start) > SLOP) {
      this.#dragging = true;
      this.#move(x);
    }
    this.#down.set(event.pointerId, x);
  };

  readonly up = (event: PointerEvent): void => {
    if (!this.#down.delete(event.pointerId)) return;
    const touched = !this.#dragging && !this.#pinched && event.type === 'pointerup';
    if (touched) this.#move(across(event));
  };

  /** Zooms with Ctrl held or the plots in focus; where it cannot zoom further the page scrolls on. */
  readonly wheel = (event: WheelEvent): void => {
    const focused = (event.currentTarget as HTMLElement).matches(':focus');
    const held = this.#deeds.held();
    if (!held || !(event.ctrlKey || focused) || event.deltaY === 0) return;
    const { axis } = held;
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    const window = zoomed(axis.window, axis.t(across(event)), wheelFactor(event.deltaY * lines), axis.span);
    const changed = window[0] !== axis.window[0] || window[1] !== axis.window[1];
    if (!changed && !event.ctrlKey) return;
    event.preventDefault();
    if (changed) this.#deeds.open(window);
  };

  #move(x: number): void {
    const held = this.#deeds.held();
    if (held) this.#deeds.move(held.axis.t(x));
  }

  #pinch(before: number, after: number, other: number): void {
    const held = this.#deeds.held();
    const [was, is] = [Math.abs(before - other), Math.abs(after - other)];
    if (!held || was < 8 || is < 8) return;
    const { axis } = held;
    this.#deeds.open(zoomed(axis.window, axis.t((after + other) / 2), was / is, axis.span));
  }
}

/** Hands on the bar of all the time: a stretch brushed over it is opened, a touch moves the window there. */
export class BarHand {
  readonly #deeds: Deeds;
  #from: number | undefined;

  constructor(deeds: Deeds) {
    this.#deeds = deeds;
  }

  readonly down = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button !== 0) return;
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.#from = across(event);
  };

  readonly moved = (event: PointerEvent): void => {
    if (this.#from !== undefined) this.#deeds.brushing([this.#from, across(event)]);
  };

  readonly up = (event: PointerEvent): void => {
    const held = this.#deeds.held();
    if (held && this.#from !== undefined && event.type === 'pointerup') {
      const { axis } = held;
      const t = (x: number): number => (Math.min(axis.width, Math.max(0, x)) / axis.width) * axis.span;
      this.#deeds.open(brushed(t(this.#from), t(across(event)), axis.window, axis.span));
    }
    this.#from = undefined;
    this.#deeds.brushing(undefined);
  };
}
