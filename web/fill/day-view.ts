import { html, nothing, type TemplateResult } from 'lit';
import { type Display, parseTimeOfDay } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { FillDay, FillPlanned } from '../engine/fill-asked.ts';
import { newlyWritten } from '../state/typed.ts';
import { type Blanks, row, taken } from './blanks.ts';
import { momentOf, timeWords, typedTime, wallOf } from './clock.ts';
import { shownFigure, typedFigure } from './typed-figure.ts';

export interface DaySeen {
  readonly s: Scenario;
  readonly day: FillDay;
  readonly planned: FillPlanned;
  /** Lowest point of the pond's edge, m. */
  readonly edge: number;
  readonly zone: string;
  readonly blanks: Blanks;
  readonly to: (day: FillDay) => void;
  readonly mark: (level: string) => void;
}

const NO_TIME: Readonly<Record<Display, string>> = {
  metric: 'is no time of day: give it as 16:03.',
  us: 'is no time of day: give it as 4:03 pm.',
};

const timeText = (time: number, display: Display): string => {
  const { figure, half } = timeWords(time, display);
  return half === '' ? figure : `${figure} ${half}`;
};

/** When the hose is opened, as it is set or as the file has it. */
export function openedAt({ day, planned: { plan }, s }: Pick<DaySeen, 'day' | 'planned' | 's'>): {
  readonly date: string;
  readonly time: number;
} {
  const moment = day.opened ?? s.starts;
  const shift = day.opened === undefined ? (plan?.open?.t ?? 0) : 0;
  const at = new Date(Date.parse(`${moment.slice(0, 16)}:00Z`) + shift * 1000).toISOString();
  return { date: at.slice(0, 10), time: parseTimeOfDay(at.slice(11, 16)) ?? 0 };
}

/** The day of the fill: when the hose is opened and where the water stands then. */
export function dayView(seen: DaySeen): TemplateResult {
  const { day, blanks, zone, to } = seen;
  const at = openedAt(seen);
  const wall = (): ReturnType<typeof wallOf> => wallOf(new Date(), zone);
  const opened = timeBlank(seen, 'opened', 'hose opened at', at.time, (time) => {
    // Whoever says an hour and no day means today: the file's own day is an example's, or long past.
    const date = day.opened === undefined ? wall().date : at.date;
    if (time !== undefined) to({ ...day, opened: momentOf(date, time) });
  });
  const now = (): void => {
    const { date, time } = wall();
    to({ ...day, opened: momentOf(date, time) });
  };
  return html`${row(
    'hose opened',
    html`${opened} <input type="date" aria-label="day on which the hose is opened" .value=${at.date} required
        @change=${({ target }: Event) => {
          const { value } = target as HTMLInputElement;
          if (value !== '') to({ ...day, opened: momentOf(value, at.time) });
        }} />
      <button @click=${now}>just now</button>`,
    blanks.says('opened'),
  )}
  ${waterRow(seen)}
  ${markRow(seen)}`;
}

/** What else the hour of being full hangs on: a night, an hour to be ready by. */
export function hoursView(seen: DaySeen): TemplateResult {
  const { day, blanks, to } = seen;
  const [from, until] = day.nights ?? [undefined, undefined];
  const by = timeBlank(seen, 'by', 'to be full by', day.by, (time) => to({ ...day, by: time }));
  const shut = timeBlank(seen, 'shut', 'shut overnight from', from, (time) =>
    to({ ...day, nights: time === undefined ? undefined : [time, until ?? 7 * 3600] }),
  );
  const open = timeBlank(seen, 'open again', 'opened again at', until, (time) =>
    to({ ...day, nights: time === undefined ? undefined : [from ?? 22 * 3600, time] }),
  );
  return html`${row('to be full by', by, blanks.says('by'))}
    ${row('shut overnight', html`${shut} to ${open}`, blanks.says('shut', 'open again'))}`;
}

function timeBlank(
  { s: { display }, blanks }: DaySeen,
  key: string,
  label: string,
  time: number | undefined,
  put: (time: number | undefined) => void,
): TemplateResult {
  return blanks.field({
    key,
    label,
    stands: time === undefined ? '' : timeText(time, display),
    wide: 8,
    take: (text) => {
      const typed = typedTime(text);
      if (text.trim() !== '' && typed === undefined) return `${JSON.stringify(text.trim())} ${NO_TIME[display]}`;
      put(typed);
      return undefined;
    },
  });
}

function waterRow(seen: DaySeen): TemplateResult {
  const { s, day, planned, edge, blanks, to } = seen;
  const [floor] = s.pond.profile[0];
  const { display } = s;
  const isEmpty = planned.water <= floor;
  const field = blanks.field({
    key: 'water',
    label: 'water then, below the edge',
    stands: isEmpty ? 'empty' : shownFigure(edge - planned.water, 'length', display),
    wide: 10,
    take: (text) =>
      /^empty$/i.test(text.trim())
        ? void to({ ...day, water: 'empty' })
        : taken(
            typedFigure(text, 'length', display),
            (below) => to({ ...day, water: below === undefined ? undefined : edge - below }),
            (below) => outOfPond(edge - below, edge, floor, display),
          ),
  });
  const empty = html`<button @click=${() => to({ ...day, water: 'empty' })}>empty</button>`;
  return row('water then', html`${field} ${isEmpty ? nothing : html`below the edge ${empty}`}`, blanks.says('water'));
}

function outOfPond(level: number, edge: number, floor: number, display: Display): string | undefined {
  if (level < floor) return `The pond is only ${shownFigure(edge - floor, 'length', display)} deep.`;
  return level > edge ? 'That is over the edge of the pond: it runs over there.' : undefined;
}

function markRow({ s, edge, blanks, mark }: DaySeen): TemplateResult {
  const { fillMark, profile } = s.pond;
  const { display } = s;
  const field = blanks.field({
    key: 'mark',
    label: 'fill mark, below the edge',
    stands: fillMark === undefined ? '' : shownFigure(edge - fillMark, 'length', display),
    wide: 10,
    take: (text) =>
      taken(
        typedFigure(text, 'length', display),
        (below) => below !== undefined && mark(newlyWritten(edge - below, 'length', display)),
        (below) => outOfPond(edge - below, edge, profile[0][0], display),
      ),
  });
  return row('fill mark', html`${field} below the edge`, blanks.says('mark'));
}
