import { css, unsafeCSS } from 'lit';
import { sectionCss } from '../section/styles.ts';

export const mineStyles = [
  css`${unsafeCSS(sectionCss)}`,
  css`
    .title {
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: 12px;
    }
    .title button {
      min-width: 44px;
    }
    h2 {
      margin: 0;
      font-size: 21px;
      line-height: 26px;
      font-weight: 400;
    }
    .next {
      display: block;
      width: 100%;
      text-align: left;
      border-left: 3px solid var(--ink);
      padding: 4px 0 4px 10px;
      line-height: 20px;
    }
    h3 {
      margin: 16px 0 0;
    }
    .row {
      display: grid;
      grid-template-columns: 72px minmax(0, 1fr);
      column-gap: 12px;
      border-top: 0.8px solid var(--rule);
      padding: 8px 0 6px;
      font-size: 15px;
      line-height: 20px;
    }
    .picture {
      display: block;
      overflow: hidden;
      margin-top: 2px;
    }
    .asks {
      display: block;
    }
    .line {
      display: grid;
      grid-template-columns: minmax(0, 1fr) 44px 44px;
      align-items: center;
    }
    .line.named {
      grid-template-columns: minmax(0, 4.4em) minmax(0, 1fr) 44px 44px;
    }
    .line label {
      font-style: italic;
      font-size: 14px;
      line-height: 17px;
      color: var(--ink2);
    }
    .line input {
      font: inherit;
      font-size: 18px;
      color: inherit;
      border: 0;
      border-radius: 0;
      width: 100%;
      min-height: 44px;
      padding: 0 2px;
      scroll-margin: 200px 0 80px;
      --rule-width: 1px;
      background: linear-gradient(var(--ink2), var(--ink2)) 2px calc(100% - 8px) / calc(100% - 18px) var(--rule-width)
        no-repeat;
    }
    .line input[aria-invalid='true'] {
      --rule-width: 2.5px;
    }
    .step {
      width: 44px;
      font-size: 21px;
      text-decoration: none;
    }
    .assumed input,
    .example input,
    .unused input,
    .assumed button[data-stands] {
      color: var(--ink2);
      font-style: italic;
    }
    .choices {
      display: flex;
      flex-wrap: wrap;
      gap: 0 10px;
    }
    .choices button {
      min-width: 44px;
      font-size: 14.5px;
      scroll-margin: 200px 0 80px;
      text-align: left;
    }
    .choices button:not([aria-pressed='true']) {
      text-decoration: none;
      color: var(--ink2);
    }
    .choices button[data-stands]:not([aria-pressed='true']) {
      text-decoration: underline 1px dotted;
    }
    .about,
    .wrong {
      margin: 0;
      min-height: 17px;
      font-size: 13px;
      line-height: 17px;
      font-style: italic;
      color: var(--ink2);
    }
    .about:empty {
      min-height: 0;
    }
    .wrong {
      color: var(--ink);
      border-left: 3px solid var(--ink);
      padding-left: 8px;
    }
    .list li {
      border-top: 0.8px solid var(--rule);
      padding-bottom: 6px;
    }
    .list button {
      text-align: left;
      line-height: 19px;
      font-size: 15px;
    }
    .list p {
      margin: -6px 0 0 2px;
      font-size: 14px;
      line-height: 18px;
      color: var(--ink2);
    }
    .measured {
      fill: none;
      stroke: var(--ink);
      stroke-width: calc(2.1px * var(--line, 1));
      stroke-linecap: round;
      stroke-linejoin: round;
    }
    .measured.tick {
      stroke-width: calc(1.2px * var(--line, 1));
    }
    .measured.float {
      fill: var(--paper);
    }
    .pipe-full {
      fill: none;
      stroke: var(--flow);
      stroke-linejoin: round;
    }
    .pipe-line {
      fill: none;
      stroke: var(--ink);
      stroke-width: calc(3px * var(--line, 1));
      stroke-linejoin: round;
    }
    .bore {
      fill: var(--pore);
    }
    .sheet {
      fill: var(--w1);
      opacity: 0.75;
    }
    .jet {
      stroke-width: 2.6px;
    }
    @media (min-width: 820px) and (max-width: 999px) {
      .rows {
        columns: 2;
        column-gap: 32px;
      }
      .row {
        break-inside: avoid;
      }
    }
  `,
];
