const UNIT = 'gal|gph|gpm|L/min|L|m³/h|m³|mm|m|in|ft|d|h|min|s|am|pm|mg/L|kWh';
/** Units behind which a smaller one of the same figure may follow: '1 min 10 s', '3 ft 6 in'. */
const CHAINED = 'ft|d|h|min';

const byUnit = new RegExp(`(?<=[\\d½¼¾⅛⅜⅝⅞]) (?=(${UNIT})(?![a-z])|[%°])`, 'g');
const byChain = new RegExp(`(?<=\\d\\u00a0(${CHAINED})) (?=[\\d\\u00a0./]+\\u00a0(in|h|min|s)(?![a-z]))`, 'g');

/** A figure stays on one line: with its unit, with its fraction, and with the smaller unit that goes on from it. */
export const kept = (says: string): string =>
  says
    .replace(byUnit, '\u00a0')
    .replace(/(?<=\d) (?=\d+\/\d+\u00a0)/g, '\u00a0')
    .replace(byChain, '\u00a0');
