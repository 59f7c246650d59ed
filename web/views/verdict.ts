import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Verdict } from '../../sim/results/answer.ts';

/** The words for people; files say pass, tight, fail, told. */
export const verdictWord: Record<Verdict, string> = { pass: 'holds', tight: 'tight', fail: 'fails', told: 'told' };

/** A level line clear of its limit, one close under it, one crossed out, and a bare dash. */
const signs: Record<Verdict, SVGTemplateResult> = {
  pass: svg`<path d="M2 8.5 6.5 13 14 3.5" />`,
  tight: svg`<path d="M2 6h12M2 10h12" />`,
  fail: svg`<path d="M3 3l10 10M13 3 3 13" />`,
  told: svg`<path d="M4 8h8" />`,
};

export function verdictSign(verdict: Verdict): TemplateResult {
  return html`<svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">${signs[verdict]}</svg>`;
}

/** Sign and word together, so that no verdict rests on color or on a sign alone. */
export function verdictMark(verdict: Verdict): TemplateResult {
  return html`<span class="verdict ${verdict}">${verdictSign(verdict)} ${verdictWord[verdict]}</span>`;
}

export const verdictStyles = css`
  .verdict {
    white-space: nowrap;
  }
  .verdict svg {
    fill: none;
    stroke: currentColor;
    stroke-width: 2;
  }
  .verdict.fail {
    color: var(--brick);
  }
  .verdict.told {
    color: var(--ink2);
  }
`;
