import { isObject } from '../scenario/fields.ts';

/** Keys that say the same thing in two ways: what is laid over in the one takes the other away. */
const EITHER = [
  ['profile', 'shape'],
  ['plan', 'factor'],
  ['diameter', 'size'],
  ['power', 'efficiency'],
] as const;

/** One part of a file laid over another, key by key; whatever is no object of keys (a list, a figure) whole. */
export function layOver(under: unknown, over: unknown): unknown {
  if (over === undefined) return under;
  if (!isObject(under) || !isObject(over)) return over;
  const keys = new Set([...Object.keys(under), ...Object.keys(over)]);
  for (const [one, other] of EITHER) {
    if (Object.hasOwn(over, one) && !Object.hasOwn(over, other)) keys.delete(other);
    if (Object.hasOwn(over, other) && !Object.hasOwn(over, one)) keys.delete(one);
  }
  const own = (part: Record<string, unknown>, key: string) => (Object.hasOwn(part, key) ? part[key] : undefined);
  return Object.fromEntries([...keys].map((key) => [key, layOver(own(under, key), own(over, key))]));
}
