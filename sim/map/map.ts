import type { Scenario } from '../scenario/scenario.ts';
import type { MapAnswer, MapPoint, Plane } from './answer.ts';
import { missOf } from './between.ts';
import { blank, mainStone, pointOf } from './point.ts';
import { holdingAlong } from './region.ts';
import { noPlane, whatIsLeftOut } from './says.ts';
import { type Found, Seeker } from './seeker.ts';
import { settingFor } from './share.ts';

/** Points along each side where nothing else is asked for. */
const POINTS = 21;
/** The slowest a pump is looked at in the plane of flow, −. */
const SLOWEST = 0.4;
/** Tenths of a speed as they are typed are tenths. */
const ROUNDING = 1e-9;

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
  const [from, to] = plane === 'valves' ? [0, 1] : speedsFor(s);
  const x = options.x ?? spaced(from, n, to);
  const y = options.y ?? spaced(0, n);
  const over = mainStone(s);
  const seeker = new Seeker(s);
  const locate = plane === 'valves' ? valvesAt(s, seeker, over) : flowAt(s, seeker, over);
  const points = plane === 'valves' ? valvePlane(locate, x, y) : flowPlane(locate, x, y);
  const now = presentPoint(s, seeker, over, plane);
  const along = {
    x: holdingAlong(x, (value) => locate(value, now.y).point),
    y: holdingAlong(y, (value) => locate(now.x, value).point),
  };
  const map = { plane, x, y, points, now, along, fullSpeed: atFullSpeed(s, seeker), over };
  return {
    ok: true,
    ...map,
    miss: missOf(map),
    says: whatIsLeftOut(s, map),
    work: { balances: seeker.balances, anew: seeker.anew },
  };
}

/** Slowest and fastest of the plane of flow: up to full speed, and by whole tenths as far beyond either end as the pump runs. */
function speedsFor({ pump: { speed } }: Scenario): readonly [from: number, to: number] {
  const from = Math.min(SLOWEST, Math.floor(10 * speed + ROUNDING) / 10);
  return [from, Math.max(1, Math.ceil(10 * speed - ROUNDING) / 10)];
}

/** Speeds of the plane of flow, so far apart. */
export function speedsBy(s: Scenario, step: number): number[] {
  const [from, to] = speedsFor(s);
  return spaced(from, Math.round((to - from) / step) + 1, to);
}

const spaced = (from: number, n: number, to = 1): number[] =>
  Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));

/** A place of the plane, and the balance from which its neighbor is sought. */
interface Placed {
  readonly point: MapPoint;
  readonly found: Found | undefined;
}

type Locate = (x: number, y: number, nearby?: Found) => Placed;

const valvesAt =
  (s: Scenario, seeker: Seeker, over: string | null): Locate =>
  (bottom, top, nearby) => {
    const bothOpen = bottom > 0 && top > 0 && nearby && nearby.bottom > 0 && nearby.top > 0;
    const found = seeker.at({ bottom, top, speed: s.pump.speed }, bothOpen ? nearby : undefined);
    return { point: found ? pointOf(s, over, bottom, top, found) : blank(bottom, top, s.pump.speed), found };
  };

const flowAt =
  (s: Scenario, seeker: Seeker, over: string | null): Locate =>
  (speed, share, nearby) => {
    const found = settingFor(seeker, share, speed, nearby);
    return { point: found ? pointOf(s, over, speed, share, found) : blank(speed, share, speed), found };
  };

function valvePlane(locate: Locate, xs: readonly number[], ys: readonly number[]): MapPoint[] {
  let below: Placed[] = [];
  return ys.flatMap((top) => {
    const row: Placed[] = [];
    for (const [i, bottom] of xs.entries()) row.push(locate(bottom, top, row[i - 1]?.found ?? below[i]?.found));
    below = row;
    return row.map(({ point }) => point);
  });
}

/** From the fastest down, since a slow pump may not lift to both outlets; handed back from the slowest up. */
function flowPlane(locate: Locate, speeds: readonly number[], shares: readonly number[]): MapPoint[] {
  return shares.flatMap((share) => {
    let nearby: Found | undefined;
    const points = [...speeds].reverse().map((speed) => {
      const { point, found } = locate(speed, share, nearby);
      nearby = found ?? nearby;
      return point;
    });
    return points.reverse();
  });
}

function atFullSpeed(s: Scenario, seeker: Seeker): number | null {
  if (s.pump.speed === 1) return null;
  const { bottomFeed, topFeed } = s.plumbing;
  const found = seeker.at({ bottom: bottomFeed?.valve ?? 0, top: topFeed?.valve ?? 0, speed: 1 });
  return found?.balance.answer.flows.main ?? null;
}

function presentPoint(s: Scenario, seeker: Seeker, over: string | null, plane: Plane): MapPoint {
  const bottom = s.plumbing.bottomFeed?.valve ?? 0;
  const top = s.plumbing.topFeed?.valve ?? 0;
  const { speed } = s.pump;
  const found = seeker.at({ bottom, top, speed });
  const share = found?.balance.answer.split ?? 0;
  const [x, y] = plane === 'valves' ? [bottom, top] : [speed, share];
  return found ? pointOf(s, over, x, y, found) : { ...blank(x, y, speed), bottom, top };
}
