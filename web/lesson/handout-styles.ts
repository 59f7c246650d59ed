import { css } from 'lit';

/** Two sheets of paper: black on white whatever the screen's look, tints as grays; a narrow screen stacks their rows. */
export const handoutStyles = css`
  .presses {
    flex-wrap: wrap;
    gap: 0 24px;
  }
  .presses > div {
    flex-wrap: wrap;
    gap: 0 16px;
  }
  article {
    box-sizing: border-box;
    max-width: calc(190mm + 32px);
    margin: 0 auto 32px;
    padding: 20px 16px;
    background: #fff;
    color: #000;
    font-size: 15px;
    line-height: 20px;
  }
  h2 {
    font-size: 22px;
    line-height: 28px;
    font-weight: 400;
    margin: 0 0 4px;
  }
  h3 {
    color: #000;
    font-size: 16px;
    margin: 0 0 2px;
  }
  article p {
    max-width: none;
    margin: 0 0 4px;
  }
  .asks {
    font-style: italic;
  }
  section {
    break-inside: avoid;
    color: #000;
    margin: 14px 0 0;
  }
  figure {
    margin: 8px 0 0;
  }
  .blanks {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 18px;
    list-style: none;
    margin: 4px 0;
    padding: 0;
  }
  .blank {
    display: inline-block;
    width: 64px;
    height: 20px;
    border-bottom: 0.8px solid #000;
    vertical-align: baseline;
  }
  .blank.name {
    width: 170px;
  }
  .line {
    height: 27px;
    border-bottom: 0.8px solid #777;
  }
  table {
    font-variant-numeric: tabular-nums lining-nums;
    margin: 10px 0;
  }
  th,
  td {
    text-align: right;
    padding: 3px 0 3px 12px;
    border-top: 0;
    border-bottom: 0.8px solid #000;
    vertical-align: bottom;
    overflow-wrap: normal;
  }
  thead th {
    color: #000;
    border-bottom: 0.8px solid #000;
  }
  th:first-child {
    text-align: left;
    padding-left: 0;
  }
  @media screen and (max-width: 640px) {
    thead {
      position: absolute;
      clip-path: inset(50%);
    }
    tbody,
    tr {
      display: block;
    }
    tbody tr {
      border-bottom: 0.8px solid #000;
      padding: 4px 0;
    }
    tbody :is(th, td) {
      display: flex;
      justify-content: space-between;
      gap: 16px;
      padding: 2px 0;
      border: 0;
    }
    td::before {
      content: attr(data-label);
      font-style: italic;
    }
  }
  @media print {
    article {
      max-width: none;
      margin: 0;
      padding: 0;
    }
    article + article {
      break-before: page;
    }
  }
`;

/**
 * In the drawing of the class nothing is told that they are to find: it is made as wide as the paper, without figures,
 * and the marks in the gap have an outline, so that they can be counted.
 */
export const unfigured = css`
  svg {
    width: 100%;
    height: auto;
  }
  text.figure {
    display: none;
  }
  .dart-pale {
    fill: #fff;
    stroke: #000;
    stroke-width: 0.9px;
  }
`;
