import { css } from 'lit';

export const dyeStyles = css`
  section {
    margin: 0 0 8px;
  }
  .presses {
    display: flex;
    flex-wrap: wrap;
    gap: 0 20px;
  }
  .presses .deed {
    font-size: 18px;
    text-decoration-thickness: 1.5px;
  }
  .where {
    min-height: 46px;
  }
  .curve td:has(button) {
    padding-top: 0;
    padding-bottom: 0;
  }
  .curve tr:has(button) > * {
    vertical-align: middle;
  }
  .tenths span {
    white-space: nowrap;
    margin-right: 10px;
  }
  svg {
    display: block;
    max-width: 100%;
    overflow: visible;
  }
  @media (min-width: 800px) {
    .sides {
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
      column-gap: 24px;
    }
  }
  svg text {
    font-family: 'STIX Two Text', Palatino, Georgia, serif;
    font-variant-numeric: tabular-nums lining-nums;
  }
  .axis {
    fill: var(--ink2);
    font-size: 12px;
  }
  .over {
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
    paint-order: stroke;
  }
  .curve-name {
    fill: var(--ink);
    font-size: 13px;
    font-style: italic;
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
    paint-order: stroke;
  }
  .curve-name.present {
    fill: var(--water);
  }
  .axis-line {
    fill: none;
    stroke: var(--ink2);
    stroke-width: calc(0.8px * var(--line));
  }
  .grid {
    fill: none;
    stroke: var(--rule);
    stroke-width: calc(0.7px * var(--line));
  }
  .tenth {
    fill: none;
    stroke: var(--ink2);
    stroke-width: calc(0.9px * var(--line));
    stroke-dasharray: 1.5 3;
  }
  .passed {
    fill: var(--wash);
  }
  .both {
    fill: none;
    stroke: var(--ink3);
    stroke-width: calc(0.8px * var(--line));
  }
  .by-media {
    fill: none;
    stroke: var(--water);
    stroke-width: 2px;
  }
  .by-gap {
    fill: none;
    stroke: var(--ink);
    stroke-width: calc(1.4px * var(--line));
    stroke-dasharray: 6 4;
  }
  .as-kept {
    fill: none;
    stroke: var(--ink);
    stroke-width: calc(1.1px * var(--line));
    stroke-dasharray: 6 4;
  }
  .round-part {
    fill: none;
    stroke: var(--water);
    stroke-width: 1px;
  }
  .leader {
    fill: none;
    stroke: var(--ink2);
    stroke-width: calc(0.6px * var(--line));
  }
  .leader-dot {
    fill: var(--ink);
  }
  .hand {
    fill: none;
    stroke: var(--ink);
    stroke-width: calc(1.2px * var(--line));
  }
  .hand-head {
    fill: var(--ink);
  }
`;
