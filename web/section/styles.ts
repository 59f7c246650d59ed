import { labelsCss } from './labels/index.ts';

/** Selector of marks in a drawing in black and white; written out, since not every program that draws SVG knows `:is`. */
const hatched = (names: string): string =>
  names
    .split(' ')
    .map((name) => `svg.hatched .${name}`)
    .join(', ');

/**
 * How the marks of the drawing look, in the page's own colors; the light ones stand in where no page is around. `--line`
 * makes all lines heavier.
 */
export const sectionCss = `${labelsCss}
.stipple { fill: none; stroke: var(--stipple, #7e715b); stroke-width: calc(1.15px * var(--line, 1)); stroke-linecap: round; }
.ground { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(1.3px * var(--line, 1)); stroke-linejoin: round; }
.liner { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(1.7px * var(--line, 1)); stroke-linejoin: round; stroke-linecap: round; }
.underlay { fill: none; stroke: var(--ink2, #575146); stroke-width: calc(0.6px * var(--line, 1)); stroke-dasharray: 3 2.4; }
.stone { fill: var(--stone, #f3ede1); stroke: var(--ink, #211f1b); stroke-width: calc(1.25px * var(--line, 1)); stroke-linejoin: round; }
.stone.seen { stroke-width: calc(0.9px * var(--line, 1)); stroke: var(--ink2, #575146); }
.hatch { fill: none; stroke: var(--shade, #5b5346); stroke-width: calc(0.55px * var(--line, 1)); }
.pebbles { fill: var(--gravel, #efe8da); stroke: var(--shade, #5b5346); stroke-width: calc(0.6px * var(--line, 1)); stroke-linejoin: round; }
.blocks { fill: none; stroke: var(--shade, #5b5346); stroke-width: calc(0.6px * var(--line, 1)); }
.w1 { fill: var(--w1, #9cc3d6); } .w2 { fill: var(--w2, #74a9c5); } .w3 { fill: var(--w3, #4f8eb2); }
.w4 { fill: var(--w4, #33749c); } .w5 { fill: var(--w5, #1f5c85); } .w6 { fill: var(--w6, #14486d); }
.veil { opacity: 0.62; }
.bank-beyond { fill: none; stroke: var(--ink2, #575146); stroke-width: calc(0.6px * var(--line, 1)); }
.jet { fill: none; stroke: var(--flow, #1c6ea4); }
.lining { fill: none; stroke: var(--paper2, #fcf9f2); stroke-width: calc(0.7px * var(--line, 1)); }
.surface { fill: none; stroke: var(--edge, #14588a); stroke-width: calc(1.3px * var(--line, 1)); }
.sheet-edge { fill: none; stroke: var(--edge, #14588a); stroke-width: calc(0.9px * var(--line, 1)); stroke-linejoin: round; }
.streamline { fill: none; stroke: var(--paper2, #fcf9f2); stroke-width: calc(0.7px * var(--line, 1)); stroke-dasharray: 5 3; }
.splash { fill: none; stroke: var(--edge, #14588a); stroke-width: calc(0.9px * var(--line, 1)); stroke-linecap: round; }
.bubbles { fill: var(--foam, #fcf9f2); }
.vessel { fill: var(--paper, #f5f0e5); }
.vessel-line { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(1.3px * var(--line, 1)); stroke-linejoin: round; }
.vault-wall { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(3px * var(--line, 1)); stroke-linejoin: miter; }
.rack, .post { fill: var(--paper, #f5f0e5); stroke: var(--ink, #211f1b); stroke-width: calc(0.6px * var(--line, 1)); }
.mat { fill: var(--mat, #e6decb); stroke: var(--ink, #211f1b); stroke-width: calc(0.7px * var(--line, 1)); }
.felt { fill: none; stroke: var(--shade, #5b5346); stroke-width: calc(0.5px * var(--line, 1)); }
.net { fill: var(--pore, #c7dae2); stroke: var(--ink, #211f1b); stroke-width: calc(0.7px * var(--line, 1)); }
.grain { fill: var(--gravel, #efe8da); stroke: var(--shade, #5b5346); stroke-width: calc(0.45px * var(--line, 1)); }
.gap { fill: var(--w2, #74a9c5); }
.dart { fill: var(--water, #14588a); } .dart-pale { fill: var(--foam, #fcf9f2); }
.pipe-wall { fill: none; stroke: var(--ink, #211f1b); stroke-linejoin: round; }
.pipe-bore { fill: none; stroke: var(--paper, #f5f0e5); stroke-linejoin: round; }
.pipe-water { fill: none; stroke: var(--pore, #c7dae2); stroke-linejoin: round; }
.ribbon { fill: none; stroke: var(--flow, #1c6ea4); stroke-linejoin: round; }
.dashes { fill: none; stroke: var(--paper2, #fcf9f2); stroke-width: calc(0.9px * var(--line, 1)); stroke-dasharray: 5 9; }
.dashes.steady { stroke-dasharray: 4 7; } .dashes.slow { stroke-dasharray: 3 5; }
.fitting { fill: var(--paper, #f5f0e5); stroke: var(--ink, #211f1b); stroke-width: calc(1px * var(--line, 1)); }
.fitting.doubtful { stroke-dasharray: 2 1.5; }
.handle { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(2.2px * var(--line, 1)); stroke-linecap: round; }
.handle.bold { stroke-width: calc(5px * var(--line, 1)); }
.cover { fill: var(--paper, #f5f0e5); }
.handle.thin { stroke-width: calc(1.2px * var(--line, 1)); }
.cross { fill: none; stroke: var(--brick, #9c2f1b); stroke-width: calc(1.6px * var(--line, 1)); }
.dot { fill: var(--ink, #211f1b); }
.pump { fill: var(--paper, #f5f0e5); stroke: var(--ink, #211f1b); stroke-width: calc(1.1px * var(--line, 1)); stroke-linejoin: round; }
.screen { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(0.7px * var(--line, 1)); }
.screen-frame { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(0.6px * var(--line, 1)); }
.leaf { fill: var(--mat, #e6decb); stroke: var(--ink, #211f1b); stroke-width: calc(0.7px * var(--line, 1)); }
.thin { fill: none; stroke: var(--ink2, #575146); stroke-width: calc(0.7px * var(--line, 1)); }
.edge-line { fill: none; stroke: var(--ink2, #575146); stroke-width: calc(0.7px * var(--line, 1)); stroke-dasharray: 9 3 1.5 3; }
.fill-mark { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(1.1px * var(--line, 1)); stroke-dasharray: 0.1 3.4; stroke-linecap: round; }
.reached { fill: none; stroke: var(--ink, #211f1b); stroke-width: calc(0.8px * var(--line, 1)); stroke-dasharray: 6 4; }
.axis-line { fill: none; stroke: var(--ink2, #575146); stroke-width: calc(0.8px * var(--line, 1)); }
text { font-family: "STIX Two Text", Palatino, Georgia, serif; font-variant-numeric: tabular-nums lining-nums; }
.axis { fill: var(--ink2, #575146); font-size: 12px; }
.note { fill: var(--ink2, #575146); font-size: 12px; font-style: italic; }
.sign { fill: var(--ink, #211f1b); font-size: 12px; }
.way { fill: none; stroke: var(--water, #14588a); }
.way.deep { stroke: var(--on-deep, #fff); } .way.pale { stroke: var(--on-shallow, #0e1f2a); }
.way.faint { opacity: 0.5; }
.way-dart { fill: var(--water, #14588a); }
.way-dart.deep { fill: var(--on-deep, #fff); } .way-dart.pale { fill: var(--on-shallow, #0e1f2a); }
.label.clear { stroke: var(--w2, #74a9c5); stroke-width: 5; stroke-linejoin: round; paint-order: stroke; }
.label.clear.deep { stroke: var(--w6, #14486d); }
.spill { fill: none; stroke: var(--flow, #1c6ea4); stroke-linecap: round; stroke-linejoin: round; }
.depth { fill: none; stroke: var(--water, #14588a); stroke-width: calc(0.8px * var(--line, 1)); }
${hatched('w1 w2 w3 w4 w5 w6 gap net mat')} { fill: var(--paper, #f5f0e5); }
${hatched('veil')} { display: none; }
${hatched('surface sheet-edge')} { stroke-width: 2px; }
${hatched('ground stone vessel-line')} { stroke-width: 2.2px; }
${hatched('streamline')} { stroke: var(--water, #14588a); stroke-width: 1px; }
${hatched('bubbles dart-pale')} { fill: var(--paper, #f5f0e5); stroke: var(--edge, #14588a); stroke-width: 1px; }
${hatched('pipe-water')} { stroke: var(--paper, #f5f0e5); }
${hatched('way')} { stroke: var(--water, #14588a); stroke-width: 1.4px; }
${hatched('way-dart')} { fill: var(--water, #14588a); stroke: none; }
${hatched('label.pale label.deep')} { fill: var(--ink, #000); stroke: var(--paper, #f5f0e5); stroke-width: 5; stroke-linejoin: round; paint-order: stroke; }
`;

/** Dashes run while the page lets time run. */
export const motionCss = `
@keyframes run-14 { to { stroke-dashoffset: -14px; } }
@keyframes run-11 { to { stroke-dashoffset: -11px; } }
@keyframes run-8 { to { stroke-dashoffset: -8px; } }
@media (prefers-reduced-motion: no-preference) {
  :host([moving]) .dashes { animation: run-14 0.5s linear infinite; }
  :host([moving]) .dashes.steady { animation: run-11 0.8s linear infinite; }
  :host([moving]) .dashes.slow { animation: run-8 1.2s linear infinite; }
}
`;
