/** The hand on a map: it sets places by the pointer on the plane, by the pins of both rulers and by keys. */
import type { ReactiveControllerHost } from 'lit';
import type { OperatingMap, Plane } from '../../sim/map/answer.ts';
import type { Setting } from '../../sim/map/seeker.ts';
import type { Grips } from './plane-view.ts';
import { type Axis, keyed, type Place, rulersOf, toStep } from './ruler.ts';
import { type PlaceSet, setAt } from './setting.ts';
import { placeAt, type Sheet } from './sheet.ts';

/** Pump and valves were set by a hand on the map. */
export interface SettingSet {
  readonly plane: Plane;
  readonly setting: Setting;
  /** Settings of one gesture are undone together. */
  readonly gesture: unknown;
}

/** A share met less closely than this is set once more, −. */
const MET = 0.004;

export class Hand {
  /** Where the hand has the site, before the site has followed. */
  moved: PlaceSet | undefined;
  readonly #host: ReactiveControllerHost;
  readonly #send: (set: SettingSet) => void;
  #gesture: object | undefined;
  /** The gesture by which the last place was set, and whether that was set once more. */
  #by: unknown;
  #again = false;
  #last: PlaceSet | undefined;
  /** The next text of the site is this hand's doing. */
  #own = false;
  #on: Axis | 'plane' = 'plane';

  constructor(host: ReactiveControllerHost, send: (set: SettingSet) => void) {
    this.#host = host;
    this.#send = send;
  }

  /** Where the point stands: under the hand, else where the site is. */
  place(map: OperatingMap, { bottom, top }: Setting): Place {
    if (this.moved) return this.moved.place;
    return map.plane === 'valves' ? [bottom, top] : [map.now.x, map.now.y];
  }

  /** The site has another text: unless it is this hand's doing, the hand has nothing there any more. */
  told(): void {
    if (!this.#own && !this.#gesture) this.leave();
    this.#own = false;
  }

  leave(): void {
    this.moved = undefined;
    this.#last = undefined;
  }

  /** The map of the text there is has come, and no hand is on it: the site's own balance tells where it stands. */
  rests(map: OperatingMap, site: Setting): void {
    const { moved } = this;
    if (!moved || this.#own || this.#gesture) return;
    const { now, plane } = map;
    // The plane of valves shows where the site's answer has them, which may come after its map.
    if (plane === 'valves' && stands(now, moved.setting) && !stands(site, moved.setting)) return;
    const aside = plane === 'flow' && stands(now, moved.setting) ? moved.place[1] - now.y : 0;
    if (Math.abs(aside) > MET && !this.#again) {
      const set = setAt(map, [moved.place[0], Math.min(1, Math.max(0, moved.place[1] + aside))], 'y');
      this.#again = true;
      if (set) {
        this.#put(map, { place: moved.place, setting: set.setting });
        return;
      }
    }
    this.moved = undefined;
    this.#host.requestUpdate();
  }

  #put({ plane }: OperatingMap, set: PlaceSet): void {
    this.moved = set;
    this.#last = set;
    this.#own = true;
    this.#host.requestUpdate();
    this.#send({ plane, setting: set.setting, gesture: this.#by });
  }

  #set(map: OperatingMap, from: Place, to: Place, gesture: unknown, along?: Axis): void {
    const set = setAt(map, to, along);
    if (!set || (set.place[0] === from[0] && set.place[1] === from[1])) return;
    this.#by = gesture;
    this.#again = false;
    this.#put(map, set);
  }

  grips(map: OperatingMap, sheet: Sheet, site: Setting, box: () => DOMRect | undefined): Grips {
    const rulers = rulersOf(map);
    const set = (event: PointerEvent, gesture: unknown): void => {
      const { left, top } = box() ?? {};
      if (left === undefined || top === undefined) return;
      const [x, y] = placeAt(sheet, [event.clientX - left, event.clientY - top]);
      const from = this.place(map, site);
      const on = this.#on === 'plane' ? undefined : this.#on;
      const to = [on === 'y' ? from[0] : toStep(rulers.x, x), on === 'x' ? from[1] : toStep(rulers.y, y)] as const;
      this.#set(map, from, to, gesture, on);
    };
    const follow = (event: PointerEvent): void => {
      if (this.#gesture) set(event, this.#gesture);
    };
    return {
      down: (event, on) => {
        if (event.button !== 0) return;
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        this.#gesture = {};
        this.#on = on;
        follow(event);
      },
      move: follow,
      tap: (event) => {
        this.#on = 'plane';
        set(event, {});
      },
      up: () => {
        this.#gesture = undefined;
        this.#host.requestUpdate();
      },
      keys: (event, axis) => {
        const from = this.#stepped(map, this.place(map, site));
        const value = keyed(rulers[axis], event.key, axis === 'x' ? from[0] : from[1]);
        if (value === undefined) return;
        event.preventDefault();
        const to: Place = axis === 'x' ? [value, from[1]] : [from[0], value];
        this.#set(map, from, to, `keys on the map of ${map.plane}`, axis);
      },
    };
  }

  /** Keys go on from what was last asked, where the site still stands so. */
  #stepped({ now }: OperatingMap, place: Place): Place {
    return !this.moved && this.#last && stands(now, this.#last.setting) ? this.#last.place : place;
  }
}

const CLOSE = 1e-9;
const stands = (now: Pick<OperatingMap['now'], keyof Setting>, { bottom, top, speed }: Setting): boolean =>
  Math.abs((now.bottom ?? -1) - bottom) < CLOSE &&
  Math.abs((now.top ?? -1) - top) < CLOSE &&
  Math.abs(now.speed - speed) < CLOSE;
