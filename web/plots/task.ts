/** From a run and what somebody wants to see of it to what is drawn. */
import type { RunAnswer, Series } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { INTO_POND, runsBack } from './back.ts';
import { anchorOf, STOPS } from './flags.ts';
import type { LevelsBy } from './level-words.ts';
import { NARROW } from './place.ts';
import type { Drawn, SheetTask } from './sheet-task.ts';
import { flowLines, type Line, levelLines, limitsOf } from './subjects.ts';
import type { Window } from './time-axis.ts';

/** Another case to be seen beside the present one. */
export interface Other {
  /** 'a year later', 'if the check valve sticks open'. */
  readonly name: string;
  /** All its line is called where there is little room; left out: the same as elsewhere. */
  readonly short?: string;
  readonly series: Series;
  /** Left out: the present site. */
  readonly scenario?: Scenario;
  /** Its lines say that it fails. */
  readonly fails?: boolean;
  /** Only its levels are drawn. */
  readonly only?: 'levels';
}

/** What is drawn of the columns. */
export interface Choice {
  readonly by: LevelsBy;
  /** Columns that are drawn or left out against what is usual. */
  readonly turned: ReadonlySet<string>;
  /** Columns that come first, of the levels and of the flows. */
  readonly first: { readonly level: string; readonly flow: string };
}

export const USUAL: Choice = { by: 'depth', turned: new Set(), first: { level: 'pond', flow: INTO_POND } };

/** All that could be drawn. */
export interface Columns {
  readonly levels: readonly Line[];
  readonly flows: readonly Line[];
  /** Names of the flows that never moved. */
  readonly still: readonly string[];
  readonly other: { readonly levels: readonly Line[]; readonly flows: readonly Line[] };
}

export interface Names {
  readonly basin: (key: string) => string;
  readonly flow: (key: string) => string;
}

export function columnsOf(series: Series, scenario: Scenario, other: Other | undefined, names: Names): Columns {
  const { moved, still } = flowLines(series, scenario, names.flow);
  const site = other?.scenario ?? scenario;
  const flows = other && other.only !== 'levels' ? flowLines(other.series, site, names.flow).moved : [];
  return {
    levels: levelLines(series, scenario, names.basin),
    flows: moved,
    still,
    other: { levels: other ? levelLines(other.series, site, names.basin) : [], flows },
  };
}

/** Lines that can be told the chosen way: by depth only those with an edge. */
const tellable = (lines: readonly Line[], by: LevelsBy): Line[] =>
  lines.filter(({ measure, edge }) => measure === 'flow' || by === 'elevation' || edge !== undefined);

export const isDrawn = (line: Line, { turned }: Choice): boolean => line.usual !== turned.has(line.key);

function drawnOf(
  lines: readonly Line[],
  others: readonly Line[],
  first: string,
  choice: Choice,
  called: (name: string) => string,
): Drawn {
  const can = tellable(lines, choice.by);
  const subject = can.find(({ key }) => key === first) ?? can[0];
  if (!subject) return { lines: [], other: undefined };
  const beside = can.filter((line) => line !== subject && isDrawn(line, choice));
  const match = others.find(({ key }) => key === subject.key);
  return { lines: [subject, ...beside], other: match && { ...match, name: called(match.name) } };
}

export interface Looking {
  readonly scenario: Scenario;
  readonly answer: RunAnswer;
  readonly series: Series;
  readonly other: Other | undefined;
  readonly columns: Columns;
  readonly choice: Choice;
  readonly window: Window;
  readonly width: number;
  /** Least room below the pond's edge, m. */
  readonly wanted: number | undefined;
}

export function taskOf(looking: Looking): SheetTask {
  const { scenario, answer, series, other, columns, choice, window, width, wanted } = looking;
  const { by, first } = choice;
  // The word says what brick says by color.
  const called = (name: string): string => {
    if (width < NARROW && other?.short) return other.short;
    return `${other?.fails ? '× fails: ' : ''}${name}, ${other?.name}`;
  };
  const anchor = anchorOf(answer.events, window);
  const seen = answer.events.find(({ t, what }) => STOPS.includes(what) && t >= window[0] && t <= window[1]);
  const stop = anchor?.word === 'stop' ? anchor.t : seen?.t;
  const into = columns.flows.find(({ key }) => key === INTO_POND);
  const flows = drawnOf(columns.flows, columns.other.flows, first.flow, choice, called);
  const shown = into && flows.lines.includes(into);
  return {
    width,
    span: answer.span,
    window,
    starts: scenario.starts,
    display: scenario.display,
    by,
    levels: drawnOf(columns.levels, columns.other.levels, first.level, choice, called),
    flows,
    limits: limitsOf(scenario, wanted),
    otherFails: other?.fails ?? false,
    anchor,
    back: shown && stop !== undefined ? { back: runsBack(series, into.values, stop), line: into } : undefined,
  };
}

/** Least room below the edge by the check that asks for it; while a hand moves only the file may say it. */
export function wantedRoom({ checks }: RunAnswer, { limits }: Scenario): number | undefined {
  return checks.find(({ name }) => name === 'drain-back')?.limit ?? limits['drain-back']?.[0];
}
