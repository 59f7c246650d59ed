import type { Form, LabelLine, LabelRequest } from './request.ts';

/** One of the ways in which a label may be worded. */
export interface Wording {
  readonly form: Form;
  readonly lines: readonly LabelLine[];
}

type Words = Pick<LabelRequest, 'lines' | 'short' | 'bare'>;

const bareOf = ({ lines, bare }: Words): readonly LabelLine[] => bare ?? lines.filter(({ style }) => style === 'name');

/** A label's wordings in the order in which they are tried: the figure is the first to go. */
export function wordingsOf(words: Words): Wording[] {
  const { lines, short } = words;
  const bare = bareOf(words);
  const wordings: Wording[] = [{ form: 'full', lines }];
  if (short) wordings.push({ form: 'short', lines: short });
  if (bare.length > 0 && bare.length < lines.length) wordings.push({ form: 'figure dropped', lines: bare });
  return wordings;
}

/** The lines of one form; words that have no shorter form are as short as they get. */
export function linesOf(words: Words, form: Form): readonly LabelLine[] {
  if (form === 'full') return words.lines;
  return form === 'short' ? (words.short ?? words.lines) : bareOf(words);
}
