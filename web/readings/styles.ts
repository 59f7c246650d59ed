import { css } from 'lit';

export const readingStyles = css`
  .large {
    font-size: 19px;
    line-height: 25px;
    margin: 10px 0 6px;
  }
  section {
    margin-top: 12px;
  }
  .wrong {
    border-left: 3px solid var(--ink);
    padding-left: 10px;
  }
  .pending {
    opacity: 0.86;
  }
  .range {
    font-size: 13px;
    color: var(--ink2);
  }
  li {
    padding: 4px 0;
  }
  .handles {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(210px, 1fr));
    gap: 4px 20px;
  }
  .handle-box {
    display: flex;
    align-items: center;
    gap: 12px;
  }
  .handle-box svg {
    flex: none;
  }
  .handle-box p {
    margin: 0;
  }
  .handle-box i {
    color: var(--ink2);
  }
  svg .wall,
  svg .arc {
    fill: none;
    stroke: var(--ink);
    stroke-width: calc(1px * var(--line, 1));
  }
  svg .arc {
    stroke: var(--ink2);
    stroke-width: calc(0.7px * var(--line, 1));
  }
  svg .body {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: calc(1.3px * var(--line, 1));
  }
  svg .lever {
    stroke: var(--ink);
    stroke-width: 5;
    stroke-linecap: round;
  }
  ol {
    counter-reset: turn;
  }
  ol > li {
    counter-increment: turn;
    padding-left: 24px;
    position: relative;
  }
  ol > li::before {
    content: counter(turn) '.';
    position: absolute;
    left: 0;
    color: var(--ink2);
  }
`;
