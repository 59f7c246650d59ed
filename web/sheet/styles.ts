import { css } from 'lit';

/** The presses over the sheet and the room round it, in the page's look. */
const screenStyles = css`
  .presses {
    flex-wrap: wrap;
    gap: 0 12px;
    max-width: calc(210mm + 32px);
    margin: 0 auto;
  }
  .presses > div {
    gap: 0 8px;
  }
  .presses > .marks {
    flex: 1 0 100%;
    flex-wrap: wrap;
    gap: 4px 24px;
  }
  .presses button {
    text-align: left;
  }
  .presses label {
    flex: 1 1 15ch;
    min-width: 136px;
    max-width: 32ch;
    display: flex;
    flex-direction: column;
    font-size: 14px;
  }
  .presses input {
    font: inherit;
    font-size: 16px;
    color: var(--ink);
    background: transparent;
    border: 0;
    border-bottom: 1px solid var(--ink2);
    min-height: 44px;
    width: 100%;
    border-radius: 0;
    text-overflow: ellipsis;
  }
  .presses input[aria-invalid='true'] {
    border-bottom-width: 2.5px;
  }
  .presses label span:not(:empty) {
    margin-top: 4px;
    border-left: 3px solid var(--ink);
    padding-left: 8px;
    font-size: 13px;
    line-height: 17px;
    font-style: italic;
  }
  .presses input::placeholder {
    color: var(--ink2);
    opacity: 1;
    font-style: italic;
  }
  .presses label.name {
    flex-basis: 26ch;
    max-width: 40ch;
  }
  .presses .note {
    flex-basis: 100%;
    margin: 4px 0;
  }
  .room {
    overflow-x: auto;
    padding: 0 16px 24px;
  }
  article {
    margin: 0 auto;
    outline: 1px solid var(--ink2);
    outline-offset: 10mm;
    padding: 0;
  }
  .room > article {
    margin: 12mm auto;
  }
`;

/** The sheet itself: black on white whatever the screen's look, tints as grays, one size on the screen and on paper. */
const paperStyles = css`
  article {
    --line: 1.1;
    box-sizing: border-box;
    width: 190mm;
    height: 256mm;
    display: flex;
    flex-direction: column;
    background: #fff;
    box-shadow: 0 0 0 10mm #fff;
    color: #000;
    font-size: var(--letters, 8pt);
    line-height: 1.22;
  }
  article h2 {
    margin: 0;
    font-size: 15pt;
    line-height: 18pt;
    font-weight: 400;
  }
  article header p {
    margin: 0 0 1mm;
    max-width: none;
  }
  figure {
    margin: 0 auto;
    zoom: calc(0.729 * var(--drawing, 1));
  }
  .words {
    flex: 1;
    min-height: 0;
    columns: 2;
    column-gap: 6mm;
    column-fill: auto;
    overflow: hidden;
  }
  article.card {
    height: 126mm;
  }
  .card .words {
    column-fill: balance;
  }
  article.long {
    height: auto;
  }
  .long .words {
    overflow: visible;
    column-fill: balance;
  }
  h3 {
    margin: 1.4mm 0 0.3mm;
    border-top: 0.35mm solid #000;
    padding-top: 0.4mm;
    font-size: 1.12em;
    line-height: 1.2;
    font-style: italic;
    color: #000;
    break-after: avoid;
  }
  section:first-child > h3 {
    margin-top: 0;
  }
  article p {
    margin: 0 0 0.4mm;
    max-width: none;
  }
  article ol {
    margin: 0;
    padding-left: 1.4em;
    list-style: decimal;
  }
  article table {
    font-size: inherit;
    line-height: inherit;
  }
  article th,
  article td {
    padding: 0.2mm 2mm 0.2mm 0;
    border-top: 0.15mm solid #999;
  }
  article tr {
    break-inside: avoid;
  }
  article thead th {
    font-size: inherit;
    color: #222;
    border-top: 0;
  }
  article :is(th, td).figure {
    padding-right: 2mm;
    text-align: right;
    white-space: nowrap;
  }
  article :is(th, td):is(.figure, td):last-child {
    padding-right: 0;
  }
`;

const printStyles = css`
  @media print {
    .room {
      overflow: visible;
      padding: 0;
    }
    .room > article {
      margin: 0;
      outline: none;
      box-shadow: none;
    }
  }
`;

export const sheetStyles = [screenStyles, paperStyles, printStyles];
