import { css } from 'lit';

export const pageStyles = css`
  :host {
    max-width: 1440px;
    margin: 0 auto;
    padding: 0 16px 32px;
  }
  main {
    padding-top: 12px;
    position: relative;
  }
  .run,
  .beside,
  .before {
    display: contents;
  }
  .run {
    display: flex;
    flex-direction: column;
    gap: 12px;
  }
  .run > *,
  .beside > *,
  .before > * {
    min-width: 0;
  }
  tb-fill,
  tb-answer {
    order: 1;
  }
  .bar {
    order: 2;
  }
  .drawing {
    order: 3;
    margin: 0 -16px;
  }
  tb-dye {
    order: 3;
  }
  tb-mine,
  tb-whole-answer {
    order: 4;
  }
  tb-filter,
  .folds,
  .inputs {
    order: 5;
  }
  tb-plots {
    order: 6;
  }
  .rest {
    order: 7;
  }
  .rest > * {
    display: block;
    margin-bottom: 20px;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 20px;
    border-bottom: 0.8px solid var(--rule);
  }
  .bar .deed {
    font-size: 18px;
    text-decoration-thickness: 1.5px;
  }
  .bar .now {
    color: var(--ink2);
    font-size: 15px;
    line-height: 20px;
    flex: 1 1 160px;
  }
  .kept {
    margin: 0;
    max-width: none;
    font-size: 15px;
    line-height: 20px;
  }
  .kept button {
    display: block;
  }
  .caution {
    border-left: 3px solid var(--ink);
    padding-left: 12px;
  }
  .caution[role] {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 20px;
    max-width: none;
  }
  .pending {
    opacity: 0.86;
  }
  .others button {
    margin-right: 16px;
  }
  .trouble h2 {
    font-size: 21px;
    line-height: 26px;
    font-weight: 400;
    margin: 0 0 8px;
  }
  .trouble p {
    max-width: 80ch;
    overflow-wrap: anywhere;
  }
  .tie {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    pointer-events: none;
    overflow: visible;
    z-index: 1;
  }
  .tie path {
    fill: none;
    stroke: var(--ink);
    stroke-width: 0.9;
  }
  .tie circle {
    fill: var(--ink);
  }
  footer {
    border-top: 0.8px solid var(--rule);
    margin-top: 24px;
    padding-top: 16px;
    font-size: 14px;
    line-height: 19px;
    color: var(--ink2);
  }
  /* After the next step the drawing is what is seen to change: it stands under the lesson's presses. */
  @media (max-width: 999.98px) {
    .run:has(tb-lesson) :is(tb-answer, tb-whole-answer) {
      order: 5;
    }
    .run:has(tb-lesson) :is(.bar, tb-dye) {
      order: 4;
    }
  }
  @media (min-width: 1000px) {
    :host {
      padding: 0 40px 40px;
    }
    main {
      padding-top: 4px;
    }
    .run {
      display: grid;
      grid-template-columns: minmax(0, 1fr) 300px;
      column-gap: 40px;
      align-items: start;
      grid-template-rows: auto 1fr;
    }
    .beside {
      display: flex;
      flex-direction: column;
      gap: 12px;
      grid-area: 1 / 2 / span 2;
    }
    .before {
      display: flex;
      flex-direction: column;
      gap: 4px;
      grid-area: 1 / 1;
    }
    .rest {
      grid-area: 2 / 1;
      padding-top: 12px;
    }
    /* While the numbers are typed the answer and the drawing stay in sight. */
    .run:has(tb-mine) .before {
      position: sticky;
      top: 0;
    }
    .beside:has(tb-mine) tb-answer {
      position: sticky;
      top: 0;
      z-index: 1;
      padding-bottom: 8px;
      background: var(--paper);
    }
    .before .drawing {
      order: 1;
      margin: 0;
    }
    .bar {
      display: contents;
    }
    .bar .now {
      order: 2;
      font-size: 14px;
      line-height: 18px;
      flex: 1 1 220px;
    }
    .bar > button {
      order: 2;
    }
    .bar > .deed {
      order: 0;
    }
  }
  @media (min-width: 1280px) {
    .run {
      grid-template-columns: minmax(0, 1fr) 336px;
    }
  }
`;
