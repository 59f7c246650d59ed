import { svg, type TemplateResult } from 'lit';
import type { LogMarks } from './marks.ts';

/** Levels as dots, the fitted fall as a line, the fall by evaporation alone dashed. */
export function logPlot(marks: LogMarks, says: string): TemplateResult {
  const { width, height, left, bottom, dots, fall, dry, levels, times, unit } = marks;
  return svg`<svg class="log" viewBox="0 0 ${width} ${height}" width=${width} height=${height} role="img" aria-label=${says}>
    ${levels.map(
      ({ y, label }, i) => svg`<line class="grid" x1=${left} x2=${width - 10} y1=${y} y2=${y}></line>
        <text class="figure" x=${left - 6} y=${y + 4} text-anchor="end">${label}${i === 0 ? ` ${unit}` : ''}</text>`,
    )}
    ${times.map(
      ({ x, label }) => svg`<line class="tick" x1=${x} x2=${x} y1=${bottom} y2=${bottom + 4}></line>
        <text class="figure" x=${Math.min(x, width - 24)} y=${height - 6} text-anchor="middle">${label}</text>`,
    )}
    <path class="dry" d=${dry}></path>
    <path class="fall" d=${fall}></path>
    ${dots.map(({ x, y, counts }) =>
      counts
        ? svg`<circle class="dot" cx=${x} cy=${y} r="3.4"></circle>`
        : svg`<path class="stray" d="M${x - 4} ${y - 4}l8 8m0 -8l-8 8"></path>`,
    )}
  </svg>`;
}
