import { css, unsafeCSS } from 'lit';
import { sectionCss } from '../section/styles.ts';

/** How the fill looks: the answer large, the cut under it, fields as sentences with blanks to fill in. */
export const fillStyles = [
  unsafeCSS(sectionCss),
  css`
    :host {
      container-type: inline-size;
    }
    .lead {
      margin: 0;
      font-size: 19px;
      line-height: 24px;
      font-weight: 400;
      text-wrap: pretty;
    }
    .lead .clock {
      display: block;
      font-size: 60px;
      line-height: 62px;
      white-space: nowrap;
    }
    .lead .half {
      font-size: 30px;
    }
    .lead .day {
      font-size: 19px;
      line-height: 24px;
      display: block;
    }
    .said p {
      margin: 6px 0 0;
    }
    .pending {
      opacity: 0.86;
    }
    .old {
      border-left: 3px solid var(--ink);
      padding-left: 10px;
    }
    svg {
      display: block;
      max-width: 100%;
      overflow: visible;
    }
    .cut {
      margin: 8px -16px 0;
      overflow: hidden;
    }
    .cut svg {
      overflow: hidden;
    }
    .course-box {
      touch-action: pan-y;
      cursor: ew-resize;
      user-select: none;
    }
    .tide {
      fill: none;
      stroke: var(--ink);
      stroke-width: calc(0.9px * var(--line, 1));
      stroke-dasharray: 6 4;
    }
    .tide.full {
      stroke-width: calc(1.7px * var(--line, 1));
      stroke-dasharray: none;
    }
    .tide.under {
      stroke: var(--on-deep);
    }
    .tide.under.shallow {
      stroke: var(--on-shallow);
    }
    .tide-text {
      font-size: 14px;
      fill: var(--ink);
    }
    .tide-text.dry,
    .now {
      paint-order: stroke;
      stroke: var(--paper);
      stroke-width: 4px;
      stroke-linejoin: round;
    }
    .tide-text.full {
      font-size: 15.5px;
      font-weight: 700;
    }
    .tide-text.shallow,
    .held.shallow {
      fill: var(--on-shallow);
    }
    .tide-text.deep,
    .held.deep {
      fill: var(--on-deep);
    }
    .held {
      font-size: 14px;
    }
    .now {
      font-size: 13px;
      font-style: italic;
      fill: var(--ink);
    }
    .pointer {
      fill: var(--ink);
    }
    .hose-wall {
      fill: none;
      stroke: var(--ink);
      stroke-width: 7;
    }
    .hose-bore {
      fill: none;
      stroke: var(--flow);
      stroke-width: 4.6;
    }
    .wash {
      fill: var(--wash);
    }
    .course {
      fill: none;
      stroke: var(--water);
      stroke-width: calc(2px * var(--line, 1));
    }
    .course-done {
      fill: none;
      stroke: var(--water);
      stroke-width: 4;
    }
    .course-full {
      stroke: var(--ink);
      stroke-width: 2;
    }
    .strong {
      fill: var(--ink);
    }
    .told {
      font-size: 12px;
      line-height: 16px;
      margin: 6px 0;
    }
    .sides {
      display: grid;
      gap: 4px 40px;
    }
    @container (min-width: 620px) {
      .sides {
        grid-template-columns: minmax(0, 1.15fr) minmax(0, 1fr);
      }
      .cut {
        margin-left: 0;
        margin-right: 0;
      }
    }
  `,
];

/** Rows of blanks to be filled in: the name at the left, the figures at the right. */
export const blankStyles = css`
  .blank {
    border-top: 0.8px solid var(--rule);
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: flex-end;
    gap: 0 8px;
    padding: 2px 0;
  }
  .blank > .name {
    flex: 1 1 84px;
    padding: 6px 0 4px;
    font-size: 15px;
    line-height: 19px;
    font-style: italic;
    color: var(--ink2);
  }
  .blank .figures {
    text-align: right;
    font-size: 18px;
  }
  .blank input,
  .blank select {
    font: inherit;
    color: var(--ink);
    background: linear-gradient(var(--ink2), var(--ink2)) 0 calc(50% + 14px) / 100% 1px no-repeat;
    border: 0;
    border-radius: 0;
    min-height: 44px;
    padding: 0 2px;
    text-align: right;
    max-width: 100%;
  }
  .blank input[type='date'] {
    width: 9.5em;
    font-size: 16px;
  }
  .blank input[aria-invalid='true'] {
    background: linear-gradient(var(--ink), var(--ink)) 0 calc(50% + 14px) / 100% 2.5px no-repeat;
  }
  .blank .wrong,
  .blank .about {
    flex: 1 0 100%;
    margin: 4px 0 6px;
    font-size: 13px;
    line-height: 17px;
    font-style: italic;
    color: var(--ink2);
    max-width: none;
  }
  .blank .wrong {
    color: var(--ink);
    border-left: 3px solid var(--ink);
    padding-left: 8px;
  }
  fieldset {
    border: 0;
    margin: 0;
    padding: 0;
    min-width: 0;
  }
  legend {
    padding: 8px 0 4px;
    font-size: 15px;
    line-height: 20px;
  }
  :is(th, td).figure {
    padding-left: 10px;
  }
  th.figure {
    white-space: normal;
  }
  :is(table, details) + .note {
    margin-top: 8px;
  }
  .presses {
    display: flex;
    flex-wrap: wrap;
    gap: 0 20px;
  }
  h3 {
    margin-top: 14px;
  }
`;
