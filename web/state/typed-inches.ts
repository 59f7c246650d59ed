/** Inches as a tape shows them: whole ones and halves, quarters, eighths; fractions of one character on the page. */

const INCH = 0.0254;
/** From here up a length is told in feet and inches, in. */
const FEET_FROM = 24;

const FRACTIONS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/** '4 3/8 in' as '4⅜ in', where a fraction has a character of its own; others stay. */
export const trueFractions = (text: string): string =>
  text.replace(/(\d[ -])?(?<![\d/])(\d\/\d)(?![\d/])/g, (whole, before: string | undefined, fraction: string) => {
    const one = FRACTIONS[fraction];
    return one === undefined ? whole : `${before?.charAt(0) ?? ''}${one}`;
  });

/** '4⅜' as '4 3/8'. */
export const plainFractions = (text: string): string =>
  Object.entries(FRACTIONS)
    .reduce((plain, [fraction, one]) => plain.replaceAll(one, ` ${fraction}`), text)
    .replace(/\s+/g, ' ')
    .replace(/^([+-]?) /, '$1');

/**
 * A length in m as a file has it, '-4 3/8 in' or '3 ft 6 in'.
 *
 * @param parts of an inch it is rounded to, a power of two
 * @param inInches never in feet
 */
export function feetAndInches(value: number, parts: number, inInches: boolean): string {
  const count = Math.round((Math.abs(value) / INCH) * parts);
  const sign = value < 0 && count > 0 ? '-' : '';
  const feet = inInches || count < FEET_FROM * parts ? 0 : Math.floor(count / (12 * parts));
  const left = count - feet * 12 * parts;
  if (feet === 0) return `${sign}${mixed(left, parts)} in`;
  return left === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${mixed(left, parts)} in`;
}

/** A count of parts as a whole number and a fraction in lowest terms. */
function mixed(count: number, parts: number): string {
  const whole = Math.floor(count / parts);
  let top = count - whole * parts;
  if (top === 0) return String(whole);
  let bottom = parts;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
