/** Edits of a site that comes from a sketch: made on what the sketch expands to, kept beside the sketch. */
import type { Document } from './document.ts';

type Keys = Readonly<Record<string, unknown>>;

const isKeys = (value: unknown): value is Keys => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The document as its parts read: with the whole file in place of one that holds a sketch. */
export const expanded = (doc: Document, plain: unknown): Document =>
  plain === null ? doc : { ...doc, past: [], now: { ...doc.now, file: plain } };

/**
 * What an edit changed in the whole file, laid over the sketch's own: key by key, lists whole. What is the same object
 * in both is unchanged, as in every edit of a document. A key taken away stays as the sketch has it.
 *
 * @param plain the whole file before the edit; null where the file holds no sketch
 */
export function grafted(file: unknown, plain: unknown, changed: unknown): unknown {
  if (plain === null) return changed;
  if (!isKeys(plain) || !isKeys(changed)) return changed;
  const result: Record<string, unknown> = isKeys(file) ? { ...file } : {};
  for (const key of Object.keys(changed)) {
    if (changed[key] === plain[key]) continue;
    const own = Object.hasOwn(result, key) ? result[key] : undefined;
    result[key] = isKeys(plain[key]) ? grafted(own, plain[key], changed[key]) : changed[key];
  }
  return result;
}
