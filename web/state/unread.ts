import type { Parsed } from '../../sim/quantity/index.ts';

/** A typed text that couldn't be read, as the beginning of a sentence: '"1,3", whose comma can be read two ways,'. */
export function unread(text: string, { fault, found }: Extract<Parsed, { ok: false }>): string {
  if (fault === 'no number' || fault === 'other unit') return JSON.stringify(text.trim());
  return found.includes('", ') ? `${found},` : found;
}
