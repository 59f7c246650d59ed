import type { RunAnswer, Series } from '../../../sim/results/answer.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';
import { flagsOf, type SeatedFlag, seatFlags } from '../../plots/flags.ts';
import { momentWords, type Reading, readingsOf } from '../../plots/readings.ts';
import { type Sheet, sheetOf } from '../../plots/sheet.ts';
import type { Drawn, SheetTask } from '../../plots/sheet-task.ts';
import type { Line } from '../../plots/subjects.ts';
import { type Row, tableRows } from '../../plots/table.ts';
import { type Choice, type Columns, columnsOf, isDrawn, type Other, taskOf, wantedRoom } from '../../plots/task.ts';
import type { Window } from '../../plots/time-axis.ts';
import { basinName, flowName } from '../names.ts';

export interface Given {
  readonly scenario: Scenario;
  readonly answer: RunAnswer;
  readonly series: Series;
  readonly other: Other | undefined;
  readonly window: Window;
  readonly width: number;
  readonly choice: Choice;
}

const NAMES = { basin: basinName, flow: flowName };

/** All that is drawn of a run, made anew only where something it is made from has changed. */
export class Plotted {
  readonly given: Given;
  readonly columns: Columns;
  readonly task: SheetTask;
  readonly sheet: Sheet;
  readonly flags: readonly SeatedFlag[];
  readonly wanted: number | undefined;

  constructor(given: Given, before: Plotted | undefined) {
    const { scenario, answer, series, other, window } = given;
    const was = before?.given;
    const same = was && was.series === series && was.scenario === scenario && was.other === other;
    this.given = given;
    this.columns = same ? before.columns : columnsOf(series, scenario, other, NAMES);
    // While a hand moves a figure the check is not there, and the room it asked for goes on being asked for.
    this.wanted = wantedRoom(answer, scenario) ?? (was?.scenario.title === scenario.title ? before?.wanted : undefined);
    this.task = taskOf({ ...given, columns: this.columns, wanted: this.wanted });
    this.sheet = sheetOf(this.task);
    const back = this.task.back?.back;
    const flags = flagsOf(answer, scenario.starts, window, back);
    this.flags = seatFlags(flags, this.sheet.axis, this.sheet.place);
  }

  get lines(): Line[] {
    return [...this.task.levels.lines, ...this.task.flows.lines];
  }

  get subjects(): readonly [level: Line | undefined, flow: Line | undefined] {
    return [this.task.levels.lines[0], this.task.flows.lines[0]];
  }

  /** What is not to be seen, and why, in sentences. */
  get notes(): string[] {
    const { unnamed, beyond } = this.sheet;
    const list = (words: string, names: readonly string[]): string[] =>
      names.length > 0 ? [`${words}: ${names.join(', ')}.`] : [];
    const more = this.#events - this.flags.filter(({ own }) => own).length;
    return [
      ...list('No room beside their lines for', unnamed),
      ...list('Beyond this scale', beyond),
      ...list('Without an edge, so seen as elevations only', this.#edgeless),
      ...(more > 0 ? [`${more === 1 ? 'One more event stands' : `${more} more events stand`} in the table.`] : []),
    ];
  }

  get #events(): number {
    return this.given.answer.events.length;
  }

  /** Lines that are drawn but cannot be told as depths: they have no edge. */
  get #edgeless(): string[] {
    if (this.task.by !== 'depth') return [];
    const { choice } = this.given;
    return this.columns.levels
      .filter((line) => line.edge === undefined && isDrawn(line, choice))
      .map(({ name }) => name);
  }

  momentWords(t: number): string {
    return momentWords(t, this.task.starts, this.task.anchor);
  }

  readings(t: number): { levels: Reading[]; flows: Reading[] } {
    const { levels, flows, display, by } = this.task;
    const of = ({ lines, other }: Drawn): Reading[] => {
      const there = other && t >= other.times[0]! && t <= other.times[other.times.length - 1]!;
      return readingsOf(there ? [...lines, other] : lines, t, display, by);
    };
    return { levels: of(levels), flows: of(flows) };
  }

  /** The moment in a sentence: the subjects first of all. */
  says(t: number): string {
    const { levels, flows } = this.readings(t);
    const told = [levels[0], flows[0]].flatMap((reading) => (reading ? [`${reading.name} ${reading.says}`] : []));
    return [this.momentWords(t), ...told].join('; ');
  }

  rows(): Row[] {
    const { axis } = this.sheet;
    const { starts, display, by } = this.task;
    return tableRows(axis, this.lines, this.given.answer.events, starts, display, by);
  }

  get height(): number {
    return this.sheet.place.rail + this.sheet.place.height;
  }
}
