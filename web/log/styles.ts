import { css } from 'lit';

export const logStyles = css`
  textarea {
    display: block;
    width: 100%;
    min-height: 172px;
    padding: 8px 10px;
    resize: vertical;
    font-family: ui-monospace, monospace;
    font-size: 16px;
    line-height: 22px;
    white-space: pre;
    overflow-x: auto;
    color: var(--ink);
    background: var(--paper2);
    border: 1px solid var(--ink2);
    border-radius: 0;
  }
  label {
    display: block;
    padding: 4px 0;
  }
  .presses {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 20px;
  }
  .told li {
    border-top: 0.8px solid var(--rule);
    padding: 0 0 4px;
    font-size: 15px;
    line-height: 20px;
  }
  .large {
    font-size: 19px;
    line-height: 25px;
    margin: 10px 0 6px;
  }
  .wrong {
    border-left: 3px solid var(--ink);
    padding-left: 10px;
  }
  .pending {
    opacity: 0.6;
  }
  pre {
    margin: 0 0 8px;
    font-family: ui-monospace, monospace;
    font-size: 14px;
    line-height: 20px;
    overflow-x: auto;
  }
  input[type='file'] {
    display: none;
  }
  summary {
    min-height: 44px;
    display: flex;
    align-items: center;
    cursor: pointer;
    text-decoration: underline 1px;
    text-underline-offset: 5px;
  }
  svg.log {
    display: block;
    max-width: 100%;
    height: auto;
    font-size: 13px;
    overflow: visible;
  }
  .grid {
    stroke: var(--rule);
    stroke-width: calc(0.8px * var(--line, 1));
  }
  .tick {
    stroke: var(--ink2);
    stroke-width: calc(0.8px * var(--line, 1));
  }
  .figure {
    fill: var(--ink2);
  }
  .fall,
  .dry,
  .stray {
    fill: none;
    stroke: var(--ink);
    stroke-width: calc(1.5px * var(--line, 1));
  }
  .fall {
    stroke: var(--water);
    stroke-width: calc(2px * var(--line, 1));
  }
  .dry {
    stroke-dasharray: 5 4;
  }
  .dot {
    fill: var(--ink);
    stroke: var(--paper);
    stroke-width: 1;
  }
`;
