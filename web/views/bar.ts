import { html, nothing, type TemplateResult } from 'lit';
import { formatClock, formatDuration, formatFlow, formatLength } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { settingsAt } from '../section/settings.ts';
import type { Moment } from '../state/moment.ts';
import type { Shown } from '../state/shown.ts';

export interface Bar {
  readonly record: Shown;
  readonly moment: Moment;
  readonly scenario: Scenario;
  /** What is drawn is of an earlier state of the file, and has been for a while. */
  readonly late: boolean;
}

/** The press that stops the pump, and what the drawing shows at its moment. */
export function barView(bar: Bar, deeds: { readonly stop: () => void; readonly back: () => void }): TemplateResult {
  const { record } = bar;
  return html`<div class="bar" role="group" aria-label="The moment drawn">
    <button class="deed" @click=${deeds.stop}>stop the pump</button>
    <span class="now">${bar.late ? 'Older than what is set, computing again. ' : ''}${nowWords(bar)}</span>
    ${record.trial ? html`<button @click=${deeds.back}>back to the run</button>` : nothing}
  </div>`;
}

/** In a run: a trial says by its name whether the pump is on. */
const isDriven = ({ record, moment, scenario }: Pick<Bar, 'record' | 'moment' | 'scenario'>): boolean =>
  record.trial !== undefined || settingsAt(scenario, record.answer.events, moment.t).pumpOn;

/** '11:59: pond 110 mm below its edge; the pump lifts 182 L/min'. */
function nowWords({ record, moment, scenario }: Bar): string {
  const { display, starts, pond } = scenario;
  const clock = record.trial
    ? `trial ‘${record.trial}’, ${formatDuration(moment.t)} in`
    : formatClock(starts, moment.t);
  const after = record.stopping ? moment.t - record.stopping.at : -1;
  const main = moment.flows['main'] ?? 0;
  const pump =
    main > 1e-6
      ? isDriven({ record, moment, scenario }) || after >= 0
        ? `the pump lifts ${formatFlow(main, display)}`
        : `${formatFlow(main, display)} run in through the standing pump`
      : main < -1e-6
        ? `${formatFlow(-main, display)} run back down the main line`
        : 'the main line stands';
  const since = after > 0 && !record.trial ? `, ${formatDuration(after)} after the stop` : '';
  const below = Math.min(...pond.rim.crest.map(([, z]) => z)) - (moment.levels['pond'] ?? 0);
  const stands = below >= 0 ? `${formatLength(below, display)} below` : `${formatLength(-below, display)} above`;
  return `${clock}${since}: pond ${stands} its edge; ${pump}`;
}
