import type { Scenario } from '../scenario/scenario.ts';
import type { MapAnswer, MapPoint, Plane } from './answer.ts';
import { missOf } from './between.ts';
import { blank, mainStone, pointOf } from './point.ts';
import { noPlane, whatIsLeftOut } from './says.ts';
import { type Found, Seeker } from './seeker.ts';
import { settingFor } from './share.ts';

/** Points along each side where nothing else is asked for. */
const POINTS = 21;
/** The slowest a pump is looked at in the plane of flow, −. */
const SLOWEST = 0.4;

export interface MapOptions {
  readonly plane?: Plane;
  /** Points along each side, evenly spaced, at least 2. */
  readonly n?: number;
  /** Openings of the bottom valve, 0..1 ascending (speeds of the pump), in place of even ones. */
  readonly x?: readonly number[];
  /** Openings of the top valve, 0..1 ascending (shares below), likewise. */
  readonly y?: readonly number[];
}

/**
 * Operating map of a site as it is: the running balance over a plane of settings, the pond held at its level.
 *
 * @returns a sentence where the site has no such plane
 */
export function operatingMap(s: Scenario, options: MapOptions = {}): MapAnswer {
  const { plane = 'valves', n = POINTS } = options;
  const none = noPlane(s);
  if (none !== undefined) return { ok: false, says: none };
  const x = options.x ?? spaced(plane === 'valves' ? 0 : SLOWEST, n);
  const y = options.y ?? spaced(0, n);
  const over = mainStone(s);
  const seeker = new Seeker(s);
  const points = plane === 'valves' ? valvePlane(s, seeker, over, x, y) : flowPlane(s, seeker, over, x, y);
  const now = presentPoint(s, new Seeker(s), over, plane);
  const map = { plane, x, y, points, now, over };
  return {
    ok: true,
    ...map,
    miss: missOf(map),
    says: whatIsLeftOut(s, map),
    work: { balances: seeker.balances, anew: seeker.anew },
  };
}

const spaced = (from: number, n: number): number[] =>
  Array.from({ length: n }, (_, i) => from + ((1 - from) * i) / (n - 1));

type Rows = readonly number[];

function valvePlane(s: Scenario, seeker: Seeker, over: string | null, xs: Rows, ys: Rows): MapPoint[] {
  let below: (Found | undefined)[] = [];
  return ys.flatMap((top) => {
    const row: (Found | undefined)[] = [];
    const points = xs.map((bottom, i) => {
      const found = seeker.at({ bottom, top, speed: 1 }, bothOpen(row[i - 1]) ?? bothOpen(below[i]));
      row.push(found);
      return found ? pointOf(s, over, bottom, top, found) : blank(bottom, top, 1);
    });
    below = row;
    return points;
  });
}

/** A balance from which one with both valves open can be sought. */
const bothOpen = (found: Found | undefined): Found | undefined =>
  found && found.bottom > 0 && found.top > 0 ? found : undefined;

/** From the fastest down, since a slow pump may not lift to both outlets; handed back from the slowest up. */
function flowPlane(s: Scenario, seeker: Seeker, over: string | null, speeds: Rows, shares: Rows): MapPoint[] {
  return shares.flatMap((share) => {
    let nearby: Found | undefined;
    const points = [...speeds].reverse().map((speed) => {
      const found = settingFor(seeker, share, speed, nearby);
      nearby = found ?? nearby;
      return found ? pointOf(s, over, speed, share, found) : blank(speed, share, speed);
    });
    return points.reverse();
  });
}

function presentPoint(s: Scenario, seeker: Seeker, over: string | null, plane: Plane): MapPoint {
  const bottom = s.plumbing.bottomFeed?.valve ?? 0;
  const top = s.plumbing.topFeed?.valve ?? 0;
  const found = seeker.at({ bottom, top, speed: 1 });
  const share = found?.balance.answer.split ?? 0;
  const [x, y] = plane === 'valves' ? [bottom, top] : [1, share];
  return found ? pointOf(s, over, x, y, found) : { ...blank(x, y, 1), bottom, top };
}
