/** What is wrong with a figure as typed, in a builder's words. */
import { DIMENSIONS, type DimensionName, type Parsed } from '../../sim/quantity/index.ts';

/** As much of it as tells which one is meant. */
export const quoted = (raw: unknown): string => {
  const text = String(raw);
  return `‘${text.length > 30 ? `${text.slice(0, 29)}…` : text}’`;
};

/**
 * Why a text that couldn't be read is no figure.
 *
 * @param like a sentence with what may be typed
 */
export function faultWords(
  text: string,
  { fault }: Extract<Parsed, { ok: false }>,
  of: DimensionName,
  like: string,
): string {
  const typed = quoted(text);
  switch (fault) {
    case 'empty':
      return `Nothing is typed here. ${like}`;
    case 'no unit':
      return `${typed} has no unit. ${like}`;
    case 'other unit':
      return `${typed} is not ${DIMENSIONS[of].title}. ${like}`;
    case 'half a fraction':
      return `The fraction in ${typed} is not finished. ${like}`;
    case 'comma':
      return `The comma in ${typed} can be read two ways: put a point for decimals. ${like}`;
    case 'order':
      return `In ${typed} the greater unit comes first. ${like}`;
    default:
      return `${typed} is no figure. ${like}`;
  }
}
