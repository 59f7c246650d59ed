/** A figure and its unit stay on one line. */
export const kept = (says: string): string =>
  says.replace(/(?<=[\d½¼¾⅛⅜⅝⅞]) (?=(gal|gph|gpm|L|m³|mm|m|in|ft|h|min|s|am|pm)(?![a-z]))/g, '\u00a0');
