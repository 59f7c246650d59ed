import { css } from 'lit';

export const dialStyles = css`
  .dial {
    border-top: 0.8px solid var(--rule);
    padding: 2px 0 6px;
  }
  .head {
    display: grid;
    grid-template-columns: 1fr minmax(0, 108px) 44px 44px;
    align-items: center;
    font-size: 15px;
    overflow-wrap: anywhere;
  }
  input {
    font: inherit;
    color: inherit;
    background: transparent;
    border: 0;
    border-radius: 0;
    width: 100%;
    text-decoration: underline 1px var(--ink2);
    text-underline-offset: 5px;
    min-height: 44px;
    padding: 0 2px;
    text-align: right;
  }
  input[aria-invalid='true'] {
    text-decoration: underline 2.5px var(--ink);
  }
  .step {
    width: 44px;
    font-size: 21px;
    text-decoration: none;
  }
  .ruler {
    height: 44px;
    margin-top: -6px;
    cursor: ew-resize;
    touch-action: pan-y;
    user-select: none;
  }
  .ruler > svg {
    display: block;
    overflow: visible;
  }
  .rule {
    stroke: var(--ink2);
    stroke-width: calc(0.8 * var(--line, 1));
  }
  .hatch {
    stroke: var(--ink2);
    stroke-width: 1.4;
  }
  .turn {
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .pointer {
    fill: var(--ink);
  }
  .about,
  .wrong {
    margin: -14px 0 0;
    font-size: 13px;
    line-height: 17px;
    color: var(--ink2);
    font-style: italic;
    text-align: right;
    max-width: none;
  }
  :host([data-old]) .about:not(:empty)::after {
    content: ' …';
  }
  .wrong {
    margin-top: -6px;
    color: var(--ink);
    text-align: left;
    border-left: 3px solid var(--ink);
    padding-left: 8px;
  }
  .choice {
    border-top: 0.8px solid var(--rule);
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 18px;
    font-size: 15px;
    padding: 2px 0;
  }
  .choice .name {
    flex: 1;
  }
  .choice .about,
  .choice .wrong {
    flex: 1 0 100%;
    margin: -8px 0 6px;
  }
  .choice .wrong {
    margin: 0 0 6px;
  }
  .choice button {
    min-width: 44px;
  }
  .choice button:not([aria-pressed='true']) {
    text-decoration: none;
    color: var(--ink2);
  }
`;
