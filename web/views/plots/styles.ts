import { css, unsafeCSS } from 'lit';
import { plotsCss } from '../../plots/looks.ts';

export const plotsStyles = [
  unsafeCSS(plotsCss),
  css`
    svg {
      display: block;
      overflow: visible;
    }
    .in {
      --halo: var(--paper2, #fcf9f2);
    }
    .controls,
    .more {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 0 20px;
    }
    .controls select {
      font-size: 15px;
    }
    .controls {
      gap: 0 18px;
    }
    .controls .by {
      margin-left: auto;
      order: 3;
    }
    .sheet {
      position: relative;
      contain: layout style;
      min-height: 200px;
    }
    .flag {
      position: absolute;
      top: 0;
      height: 44px;
      padding: 6px 0 0 6px;
      text-align: left;
      text-decoration: none;
      white-space: nowrap;
      font-size: 12px;
      line-height: 16px;
      color: var(--ink2, #575146);
      display: flex;
      flex-direction: column;
    }
    .flag .what {
      font-size: 13px;
      font-style: italic;
      color: var(--ink, #211f1b);
    }
    .short .flag {
      flex-direction: row;
      gap: 7px;
      padding-top: 5px;
    }
    .flag:hover .what,
    .flag[aria-pressed='true'] .what {
      text-decoration: underline 1px;
      text-underline-offset: 3px;
    }
    .hand,
    .brush {
      position: absolute;
      touch-action: pan-y;
      cursor: ew-resize;
    }
    .brush {
      height: 44px;
      cursor: crosshair;
    }
    .readings {
      margin: 0 0 4px;
      max-width: none;
      min-height: 40px;
      font-size: 14px;
      line-height: 20px;
      color: var(--ink2, #575146);
    }
    .readings b {
      font-weight: 400;
      color: var(--ink, #211f1b);
    }
    .readings .subject {
      color: var(--water, #14588a);
    }
    .readings span {
      display: inline-block;
    }
    details[open] {
      flex: 1 1 100%;
    }
    .ends {
      display: grid;
      grid-template-columns: max-content minmax(60px, 1fr) 12ch;
      align-items: center;
      gap: 0 12px;
      max-width: 640px;
    }
    .ends label {
      display: contents;
    }
    .ends input {
      height: 44px;
      margin: 0;
      width: 100%;
      accent-color: var(--ink, #211f1b);
    }
    .presses {
      display: flex;
      flex-wrap: wrap;
      gap: 0 16px;
      align-items: center;
    }
    .rows {
      max-height: 420px;
      overflow: auto;
      overscroll-behavior-x: contain;
    }
    .rows th,
    .rows td {
      white-space: nowrap;
      padding-right: 16px;
    }
    .rows thead th {
      position: sticky;
      top: 0;
      background: var(--paper, #f5f0e5);
    }
  `,
];
