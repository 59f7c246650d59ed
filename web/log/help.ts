import { html, type TemplateResult } from 'lit';
import type { Display } from '../engine/protocol.ts';

const SAMPLE: Readonly<Record<Display, string>> = {
  metric: `2031-06-02 08:00, 110 mm, on
2031-06-03 08:00, 118 mm, on, added 40 L
2031-06-04 08:00, 121 mm, on
2031-06-04 09:00, , off
2031-06-04 10:00, 84 mm, off
2031-06-05 08:00, 87 mm, off, rain 2 mm`,
  us: `2031-06-02 8:00 am, 4 3/8 in, on
2031-06-03 8:00 am, 4 5/8 in, on, added 10 gal
2031-06-04 8:00 am, 4 3/4 in, on
2031-06-04 9:00 am, , off
2031-06-04 10:00 am, 3 3/8 in, off
2031-06-05 8:00 am, 3 1/2 in, off, rain 1/8 in`,
};

/** How a log is written. */
export function helpView(display: Display): TemplateResult {
  return html`<details>
    <summary>how a log is written</summary>
    <pre tabindex="0" role="region" aria-label="A log as it may be written">${SAMPLE[display]}</pre>
    <p class="note">A line for each reading: when, the level, whether the pump runs. Then, if there was any, the water added right
      after the reading and the rain since the one before. A line without a level tells when the pump was switched. Commas,
      semicolons or tabs stand between them; times may also count from the start, as 36 h or 3 d.</p>
    <p class="note">Read at one place, at the same hour, and with the pump off an hour after it stopped. Do not fill up meanwhile; shut the
      autofill. A line ‘evaporation 3 to 5 mm/d’ tells what a bucket of pond water beside it lost.</p>
  </details>`;
}
