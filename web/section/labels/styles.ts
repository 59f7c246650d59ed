/** How words, leaders, dimensions and the detail look, in the page's own colors; the light ones where no page is around. */
export const labelsCss = `
.label { fill: var(--ink, #211f1b); }
.label.name { font-size: 13px; font-style: italic; }
.label.figure { font-size: 12.5px; }
.label.letter { font-size: 14px; }
.label.halo { stroke: var(--paper, #f5f0e5); stroke-width: 4; stroke-linejoin: round; paint-order: stroke; }
.label.pale { fill: var(--on-shallow, #0e1f2a); }
.label.deep { fill: var(--on-deep, #fff); }
.leader { fill: none; stroke: var(--ink2, #575146); stroke-width: 0.6; }
.tick { fill: none; stroke: var(--ink, #211f1b); stroke-width: 1; }
.detail-ground { fill: var(--paper, #f5f0e5); }
.detail-bank { fill: var(--paper, #f5f0e5); stroke: var(--ink2, #575146); stroke-width: 0.7; }
.detail-liner { fill: none; stroke: var(--ink, #211f1b); stroke-width: 2.4; stroke-linejoin: round; stroke-linecap: round; }
.detail-pipe { fill: var(--paper, #f5f0e5); stroke: var(--ink, #211f1b); stroke-width: 1; }
.detail-frame { fill: none; stroke: var(--ink, #211f1b); stroke-width: 0.8; }
.detail-window { fill: none; stroke: var(--ink, #211f1b); stroke-width: 0.8; }
`;
