import { type Display, parseQuantity } from '../../sim/quantity/index.ts';
import { unread } from '../state/unread.ts';

export type TypedLength = { readonly value: number | undefined } | { readonly wrong: string };

/** A length as it was typed, m; a bare figure counts in the display's own unit, nothing typed is undefined. */
export function typedLength(text: string, display: Display): TypedLength {
  if (text.trim() === '') return { value: undefined };
  const bare = parseQuantity(`${text} ${display === 'us' ? 'in' : 'mm'}`, 'length');
  const parsed = parseQuantity(text, 'length');
  if (parsed.ok) return { value: parsed.value };
  if (parsed.fault === 'no unit' && bare.ok) return { value: bare.value };
  const like = display === 'us' ? '4 ft 3 1/2 in' : '1.30 m or 1300 mm';
  return { wrong: `${unread(text, parsed)} is no length: write it as ${like}.` };
}
