import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { angleWords, type Handle } from '../../sim/readings/setTo.ts';

const [WIDE, TALL, R] = [88, 64, 13];
const [CX, CY] = [30, 32];

/** A valve seen from above: its pipe lies across, its handle at its true angle, a tick every 15° from open to shut. */
export function handleDrawing({ angle }: Handle): SVGTemplateResult {
  const at = (degrees: number, r: number): string => {
    const turn = (-degrees * Math.PI) / 180;
    return `${(CX + r * Math.cos(turn)).toFixed(1)} ${(CY + r * Math.sin(turn)).toFixed(1)}`;
  };
  const ticks = [0, 15, 30, 45, 60, 75, 90].map((each) => `M${at(each, 27)}L${at(each, each % 45 === 0 ? 33 : 30)}`);
  return svg`<svg width=${WIDE} height=${TALL} viewBox="0 0 ${WIDE} ${TALL}" aria-hidden="true">
    <path class="wall" d="M0 ${CY - 6}H${WIDE}M0 ${CY + 6}H${WIDE}" />
    <path class="arc" d="M${at(0, 27)}A27 27 0 0 0 ${at(90, 27)}${ticks.join('')}" />
    <circle class="body" cx=${CX} cy=${CY} r=${R} />
    <path class="lever" d="M${at(angle + 180, 4)}L${at(angle, 23)}" />
  </svg>`;
}

export function handleView(name: string, handle: Handle): TemplateResult {
  return html`<div class="handle-box">${handleDrawing(handle)}<p>${name}<br /><i>${angleWords(handle)}</i></p></div>`;
}
