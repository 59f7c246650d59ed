import { css } from 'lit';

export const mapStyles = css`
  :host {
    margin: 4px 0 12px;
  }
  .presses {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 16px;
  }
  .presses p {
    margin: 0;
  }
  .sheet {
    position: relative;
    max-width: 100%;
  }
  svg {
    display: block;
    overflow: visible;
    touch-action: pan-y;
  }
  .room {
    display: grid;
    gap: 8px 28px;
  }
  .pending {
    opacity: 0.7;
  }
  .plane {
    fill: transparent;
    stroke: var(--ink);
    stroke-width: 0.9;
    cursor: crosshair;
  }
  .dot {
    fill: var(--stipple);
  }
  path.line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.1;
    stroke-linejoin: round;
    pointer-events: none;
  }
  path.border {
    stroke-width: 1.9;
  }
  path.onset {
    stroke-width: 1.5;
    stroke-dasharray: 9 3 1.5 3;
  }
  path.stone,
  path.flow {
    stroke: var(--water);
    stroke-width: 1.5;
  }
  path.flow {
    stroke-dasharray: 12 3;
  }
  path.pore {
    stroke-dasharray: 5 3;
  }
  path.channeled {
    stroke-dasharray: 1.5 3;
    stroke-width: 1.6;
  }
  path.headroom {
    stroke: var(--ink2);
    stroke-dasharray: 9 4;
  }
  .region {
    pointer-events: none;
    fill-rule: evenodd;
  }
  text {
    font-size: 13px;
    fill: var(--ink);
  }
  text.seat {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 5px;
    stroke-linejoin: round;
    pointer-events: none;
  }
  text.name {
    font-style: italic;
    fill: var(--ink2);
  }
  text.water {
    fill: var(--water);
  }
  .tick {
    stroke: var(--ink);
    stroke-width: 0.8;
  }
  .tick.water {
    stroke: var(--water);
  }
  .cross {
    stroke: var(--ink);
    stroke-width: 0.7;
    pointer-events: none;
  }
  .point {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 2.2;
    pointer-events: none;
  }
  .pin {
    fill: var(--ink);
    pointer-events: none;
  }
  .grab {
    fill: transparent;
    cursor: grab;
    touch-action: none;
  }
  [role='slider'] {
    outline: none;
  }
  [role='slider']:focus-visible .grab {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .rows {
    overflow-x: auto;
    max-width: 100%;
  }
  td,
  th[scope='col'] {
    text-align: right;
    overflow-wrap: normal;
    white-space: nowrap;
    padding: 6px 0 6px 10px;
  }
  table select {
    max-width: 100%;
  }
  .wide {
    grid-template-columns: max-content minmax(240px, 1fr);
    align-items: start;
  }
  thead td {
    border-top: 0;
  }
`;
