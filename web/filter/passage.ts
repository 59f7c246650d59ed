/** What the water does between rack and free water at one moment: speeds, times, heads, and how far it is to lift. */
import { gapVelocity, layerLoss, liftHead } from '../../sim/laws/media.ts';
import { density, kinematicViscosity } from '../../sim/laws/water.ts';
import { gapWidth } from '../../sim/network/media.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';

/** Under this nothing flows, m³/s. */
export const STILL = 1e-7;

/** A layer as far as it is wet. */
export interface WetLayer {
  readonly name: string;
  /** Elevations of its lower end and of the top of what is wet of it, m. */
  readonly from: number;
  readonly to: number;
  /** Speed of the water in its pores, u/ε, m/s; 0 where it stands. */
  readonly speed: number;
  /** Porosity that its deposit leaves, −. */
  readonly porosity: number;
  /** Part of its pores that deposit has taken, 0..1. */
  readonly filled: number;
}

/** One moment of the water among and beside the media. */
export interface Passage {
  readonly layers: readonly WetLayer[];
  /** Whether it goes up. */
  readonly up: boolean;
  /** Flows through and round, m³/s, without sign. */
  readonly through: number;
  readonly round: number;
  /** Part of both that goes round; undefined where nothing flows. */
  readonly share: number | undefined;
  /** Gap as it stands now, wider than at rest where the media are lifted, m. */
  readonly gap: number;
  /** Speed of the water in the gap, m/s; 0 where it stands. */
  readonly gapSpeed: number;
  /** From the rack to the top of what is wet, s; undefined where nothing flows that way. */
  readonly throughTime: number | undefined;
  readonly roundTime: number | undefined;
  /** Head across the media, and that at which they float up, m. */
  readonly head: number;
  /** Head that the same flow would ask of the media clean, m. */
  readonly clean: number;
  readonly lift: number;
  /** Bottom feed at which they float up as they are now, m³/s; infinite where they are dry. */
  readonly onset: number;
  /** Part that would go round with another gap at rest, m, the bottom feed being what it is. */
  readonly shareAt: (gap: number) => number;
}

/**
 * The passage of a site with media at a moment, by the flows of its record; undefined without media.
 *
 * @param porosities what the deposit leaves of each layer's pores; clean where undefined
 */
export function passageAt(s: Scenario, { levels, flows }: Moment, porosities?: readonly number[]): Passage | undefined {
  const media = s.filter?.media;
  if (!media) return undefined;
  const viscosity = kinematicViscosity(s.water.temperature);
  const [media_, gap_] = [flows['media'] ?? 0, flows['gap'] ?? 0];
  const through = Math.abs(media_) < STILL ? 0 : Math.abs(media_);
  const round = Math.abs(gap_) < STILL ? 0 : Math.abs(gap_);
  const u = through / media.area;
  const level = levels['filter'] ?? media.bottom;
  let [z, throughTime, a, b, clean] = [media.bottom, 0, 0, 0, 0];
  const layers = media.layers.map((layer, i): WetLayer => {
    const { name, thickness, grain, permittivity } = layer;
    const porosity = porosities?.[i] ?? layer.porosity;
    const wet = Math.min(thickness, Math.max(0, level - z));
    const { viscous, inertial } = layerLoss(grain, permittivity, thickness, layer.porosity, porosity, viscosity);
    a += wet * viscous;
    b += wet * inertial;
    const before = layerLoss(grain, permittivity, thickness, layer.porosity, layer.porosity, viscosity);
    clean += wet * (before.viscous + before.inertial * u) * u;
    const speed = u / porosity;
    if (speed > 0) throughTime += wet / speed;
    const from = z;
    z += thickness;
    return { name, from, to: from + wet, speed, porosity, filled: 1 - porosity / layer.porosity };
  });
  const wet = Math.max(0, Math.min(level, z) - media.bottom);
  const up = media_ + gap_ >= 0;
  const head = (a + b * u) * u;
  const lift = liftHead(media.submergedWeight + media.holdDown, media.area, density(s.water.temperature));
  const widthAt = (at: number, rest: number): number => (up ? gapWidth({ ...media, gap: rest }, at, lift) : rest);
  const gap = widthAt(head, media.gap);
  const gapSpeed = gap > 0 ? round / (media.perimeter * gap) : 0;
  const whole = through + round;
  return {
    layers,
    up,
    through,
    round,
    share: whole > 0 ? round / whole : undefined,
    gap,
    gapSpeed,
    throughTime: throughTime > 0 ? throughTime : undefined,
    roundTime: gapSpeed > 0 && wet > 0 ? wet / gapSpeed : undefined,
    head,
    clean,
    lift,
    onset: media.area * velocityAt(lift, a, b) + roundAt(media.perimeter, lift, wet, media.gap, viscosity),
    shareAt: (rest) => {
      const q = (v: number): number => {
        const h = (a + b * v) * v;
        return media.area * v + roundAt(media.perimeter, h, wet, widthAt(h, rest), viscosity);
      };
      return whole > 0 ? 1 - (media.area * rootOf(q, whole, whole / media.area)) / whole : 0;
    },
  };
}

/** Velocity that costs a head, m/s: the root of h = a u + b u². */
const velocityAt = (h: number, a: number, b: number): number =>
  a + b > 0 ? (2 * h) / (a + Math.sqrt(a * a + 4 * b * h)) : Infinity;

const out = new Float64Array(4);

function roundAt(perimeter: number, head: number, wet: number, gap: number, viscosity: number): number {
  if (!(gap > 0 && wet > 0)) return 0;
  gapVelocity(head, wet, gap, viscosity, out);
  return perimeter * gap * out[0];
}

/** Where a rising function reaches a value between 0 and `most`; halved until nothing is left between. */
function rootOf(f: (x: number) => number, value: number, most: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 60; i++) {
    const mid = 0.5 * (low + high);
    if (f(mid) < value) low = mid;
    else high = mid;
  }
  return 0.5 * (low + high);
}

/** How many times as fast as in truth the marks may move: slow motion, true time, time let run. */
const FACTORS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;
/** A passage takes about this long on the screen, s. */
const WATCHED = 7;

/** Times as fast as in truth at which the quicker of both ways is best watched. */
export function watchedAt({ throughTime, roundTime }: Passage): number {
  const quick = Math.min(throughTime ?? Infinity, roundTime ?? Infinity);
  if (!Number.isFinite(quick)) return 1;
  const wanted = quick / WATCHED;
  const far = (factor: number): number => Math.abs(Math.log(factor / wanted));
  return FACTORS.reduce((best, factor) => (far(factor) < far(best) ? factor : best), 1 as number);
}

/** The shortest passage that can be followed on the screen, s. */
const FOLLOWED = 2.4;

/** One speed for several cases: as fast as the quickest of their ways can be followed. */
export function watchedTogether(passages: readonly (Passage | undefined)[]): number {
  const quick = Math.min(...passages.flatMap((each) => [each?.throughTime ?? Infinity, each?.roundTime ?? Infinity]));
  if (!Number.isFinite(quick)) return 1;
  return FACTORS.findLast((factor) => quick / factor >= FOLLOWED) ?? FACTORS[0];
}

/** 'as fast as the water', 'ten times as fast as the water', 'in slow motion, a tenth as fast as the water'. */
export function factorWords(factor: number): string {
  if (factor === 1) return 'as fast as the water';
  if (factor > 1) return `${TIMES[factor] ?? factor} times as fast as the water`;
  return `in slow motion, ${PARTS[factor] ?? factor} as fast as the water`;
}

const TIMES: Record<number, string> = {
  2: 'two',
  5: 'five',
  10: 'ten',
  20: 'twenty',
  30: 'thirty',
  50: 'fifty',
  100: 'a hundred',
};
const PARTS: Record<number, string> = { 0.1: 'a tenth', 0.2: 'a fifth', 0.5: 'half' };
