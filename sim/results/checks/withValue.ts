import { siteWithNumber } from '../../scenario/read.ts';
import type { Crest, Pump, Scenario } from '../../scenario/scenario.ts';

/**
 * The same site with another figure at a place of the file, `watercourse[0].manning`; undefined where the place holds
 * no figure that can be put in (a word, a part of the file that was worked out before). A number of a sketch,
 * `sketch.lip`, has the whole site expanded again, all that follows from it with it.
 */
export function withValue(s: Scenario, place: string, value: number): Scenario | undefined {
  if (place.startsWith('sketch.')) return expandedAgain(s, place, value);
  if (place === 'pump.curve') return { ...s, pump: { ...s.pump, curve: scaledHead(s.pump.curve, value) } };
  if (place === 'pond.shape.plan') return withPondArea(s, place, value);
  if (place === 'pond.rim') return { ...s, pond: { ...s.pond, rim: edgeAt(s.pond.rim, value) } };
  return put(s, keysOf(place), value) as Scenario | undefined;
}

const expanded = new WeakMap<Scenario, Map<string, Scenario | undefined>>();

/** Each other site is expanded once, however many figures are asked of it. */
function expandedAgain(s: Scenario, place: string, value: number): Scenario | undefined {
  const known = expanded.get(s) ?? new Map<string, Scenario | undefined>();
  expanded.set(s, known);
  const name = `${place} ${value}`;
  if (!known.has(name)) known.set(name, siteWithNumber(s, place, value));
  return known.get(name);
}

/** Whether the water flows alike on two sites: they differ at most in weather, supply and the bill. */
export function flowsAlike(a: Scenario, b: Scenario): boolean {
  return JSON.stringify(hydraulic(a)) === JSON.stringify(hydraulic(b));
}

function hydraulic({ weather, hoses, assumed, sketched, autofill, pump, ...site }: Scenario): unknown {
  const { power, ...rest } = pump;
  return { ...site, pump: rest, autofill: autofill && { ...autofill, flow: undefined } };
}

/** A pump's curve whose heads are all multiplied by a factor. */
function scaledHead(curve: Pump['curve'], factor: number): Pump['curve'] {
  return curve.kind === 'box'
    ? { ...curve, head: curve.head * factor }
    : { ...curve, points: curve.points.map(([q, h]) => [q, h * factor] as const) };
}

/** An outline that fills another share of its box than was assumed: the same pond, wider or narrower all the way down. */
function withPondArea(s: Scenario, place: string, share: number): Scenario | undefined {
  const assumed = s.assumed.find((a) => a.place === place)?.value;
  if (typeof assumed !== 'number') return undefined;
  const factor = share / assumed;
  return { ...s, pond: { ...s.pond, profile: s.pond.profile.map(([z, area]) => [z, area * factor] as const) } };
}

/** An edge moved so that its lowest point lies at an elevation, m. */
function edgeAt(rim: Crest, elevation: number): Crest {
  const by = elevation - Math.min(...rim.crest.map(([, z]) => z));
  return { ...rim, crest: rim.crest.map(([station, z]) => [station, z + by] as const) };
}

/** `a.b[0]["c d"]` as its keys. */
function keysOf(place: string): string[] {
  return [...place.matchAll(/\[(\d+)\]|\["([^"]+)"\]|([^.[\]]+)/g)].map((m) => m[1] ?? m[2] ?? m[3]);
}

/** A copy with the figure in place; what lies beside the way is shared. */
function put(part: unknown, keys: readonly string[], value: number): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return typeof part === 'number' ? value : undefined;
  if (typeof part !== 'object' || part === null || !(key in part)) return undefined;
  const inner = put((part as Record<string, unknown>)[key], rest, value);
  if (inner === undefined) return undefined;
  if (!Array.isArray(part)) return { ...part, [key]: inner };
  const copy = [...part];
  copy[Number(key)] = inner;
  return copy;
}
