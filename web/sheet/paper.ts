/** The paper a sheet is printed on, and what of the document goes onto it. */

import type { Scenario } from '../../sim/scenario/scenario.ts';

export type Paper = 'A4' | 'Letter';

export const usualPaper = (display: Scenario['display'] | undefined): Paper => (display === 'us' ? 'Letter' : 'A4');

/** Margins so that what is printed is 190 mm wide and 259 mm tall on either paper: one layout for both. */
const MARGINS: Readonly<Record<Paper, string>> = { A4: '10mm', Letter: '10mm 12.9mm' };

/**
 * Only the sheet is printed. The page under it keeps some width, since it measures itself, and takes no room: browsers
 * print all smaller where anything is wider than the paper.
 */
const pageCss = (paper: Paper): string => `@page { size: ${paper}; margin: ${MARGINS[paper]}; }
@media print {
  html, body { background: #fff; margin: 0; }
  body > :not(.sheet) { visibility: hidden; position: absolute; left: 0; right: 0; height: 0; overflow: hidden; }
}`;

const rules = new CSSStyleSheet();

/** Rules of the page stand in the document: browsers take none from inside an element. */
export function printOn(paper: Paper): void {
  rules.replaceSync(pageCss(paper));
  if (!document.adoptedStyleSheets.includes(rules)) document.adoptedStyleSheets.push(rules);
}

export function printAsBefore(): void {
  document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== rules);
}
