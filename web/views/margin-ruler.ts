import { css, html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { type Display, formatLength } from '../../sim/quantity/index.ts';
import type { Stops } from '../../sim/studies/quick.ts';

/** The ruler ends at a round figure beyond what stands on it, m. */
const ENDS = [0.05, 0.1, 0.15, 0.2, 0.3, 0.5, 1, 2, 5];
const INCH = 0.0254;

/**
 * The margin of a stop on one ruler, from above the edge down: the limit, a pointer at the highest level with the check
 * valve sound, an open one with it failed.
 */
export function marginRuler({ sound, failed, asIs, fail }: Stops, display: Display): TemplateResult {
  const unit = display === 'us' ? 4 * INCH : 0.1;
  const most = Math.max(asIs.below, sound.below, failed.below, 2 * fail);
  const end = (ENDS.find((each) => each * 10 * unit >= most * 1.05) ?? 10) * 10 * unit;
  const least = Math.min(0, asIs.below, failed.below);
  const low = least < 0 ? Math.max(least * 1.15, -end) : 0;
  const at = (below: number): string => `${(100 * Math.min(Math.max(below, low), end) - 100 * low) / (end - low)}%`;
  const says =
    `Below the edge: ${formatLength(sound.below, display)} with the check valve sound, ` +
    `${formatLength(failed.below, display)} with it failed; ${formatLength(fail, display)} wanted.`;
  return html`<svg class="margin" role="img" aria-label=${says} width="100%" height="62">
    <line class="scale" x1="0" y1="34" x2="100%" y2="34" />
    ${[0, 0.25, 0.5, 0.75, 1].map((share) => tick(at(share * end)))}
    <line class="bar ${asIs.below < fail ? 'short' : ''}" x1=${at(fail)} y1="34" x2=${at(asIs.below)} y2="34" />
    <line class="limit" x1=${at(fail)} y1="24" x2=${at(fail)} y2="40" />
    ${pointer(at(failed.below), 'failed')}${pointer(at(asIs.below), 'now')}
    <text class="note" x=${at(0)} y="56" text-anchor=${low < 0 ? 'middle' : 'start'}>edge</text>
    <text class="note" x="100%" y="56" text-anchor="end">${formatLength(end, display)} below</text>
  </svg>
  <p class="key"><span class="full">▼</span> as it is <span class="open">▽</span> check valve failed <span>|</span> ${formatLength(fail, display)} wanted</p>`;
}

const tick = (x: string): SVGTemplateResult => svg`<line class="scale" x1=${x} y1="34" x2=${x} y2="40" />`;

const pointer = (x: string, look: string): SVGTemplateResult =>
  svg`<svg x=${x} y="20" overflow="visible"><path class="pointer ${look}" d="M0 13L-6 2H6Z" /></svg>`;

export const marginRulerStyles = css`
  .margin {
    display: block;
    overflow: visible;
  }
  .margin .scale {
    stroke: var(--ink2);
    stroke-width: 0.8;
  }
  .margin .limit {
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .margin .bar {
    stroke: var(--water);
    stroke-width: 4;
  }
  .margin .bar.short {
    stroke: var(--brick);
  }
  .margin .pointer {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1.2;
    stroke-linejoin: round;
  }
  .margin .pointer.failed {
    fill: var(--paper);
  }
  .margin text {
    font-size: 12px;
    font-style: italic;
    fill: var(--ink2);
  }
  .key {
    font-size: 13px;
    line-height: 18px;
    color: var(--ink2);
    font-style: italic;
  }
  .key span {
    font-style: normal;
    color: var(--ink);
    margin-left: 6px;
  }
`;
