import { css } from 'lit';

/** Rules every part of the page shares: rules instead of boxes, presses of 44 px, ink for everything but water. */
export const shared = css`
  :host {
    display: block;
    overflow-wrap: anywhere;
  }
  :host([hidden]) {
    display: none;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h3 {
    margin: 0 0 4px;
    font-size: 15px;
    line-height: 20px;
    font-weight: 400;
    font-style: italic;
    color: var(--ink2);
  }
  p {
    margin: 0 0 8px;
    max-width: 68ch;
    text-wrap: pretty;
  }
  ul,
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  /* Said to those who listen alone. */
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: 0;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .note {
    font-size: 14px;
    line-height: 19px;
    font-style: italic;
    color: var(--ink2);
  }
  button,
  select {
    font: inherit;
    color: var(--ink);
    background: transparent;
    border: 0;
    border-radius: 0;
    min-height: 44px;
    padding: 0 2px;
    cursor: pointer;
  }
  button {
    text-decoration: underline 1px;
    text-underline-offset: 5px;
  }
  button[aria-pressed='true'] {
    text-decoration-thickness: 3px;
  }
  select {
    border-bottom: 1px solid var(--ink2);
  }
  sup {
    line-height: 0;
  }
  :focus-visible {
    outline: 2px solid var(--ink);
    outline-offset: 2px;
  }
  details {
    min-width: 0;
    max-width: 100%;
  }
  details > summary {
    min-height: 44px;
    display: flex;
    align-items: center;
    gap: 8px;
    cursor: pointer;
    color: var(--ink2);
    font-style: italic;
    list-style: none;
  }
  details > summary::-webkit-details-marker {
    display: none;
  }
  details > summary::before {
    content: '+';
    font-style: normal;
    width: 1ch;
  }
  details[open] > summary::before {
    content: '−';
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 15px;
    line-height: 20px;
  }
  th,
  td {
    text-align: left;
    vertical-align: top;
    font-weight: 400;
    overflow-wrap: anywhere;
    padding: 6px 8px 6px 0;
    border-top: 0.8px solid var(--rule);
  }
  td.figure,
  th.figure {
    text-align: right;
    padding-right: 0;
    white-space: nowrap;
  }
  thead th {
    font-style: italic;
    font-size: 14px;
    color: var(--ink2);
    border-top: 0;
  }
`;
