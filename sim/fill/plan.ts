import { levelOf, volumeAt } from '../laws/storage.ts';
import { pondStart } from '../network/start.ts';
import { volumesAt } from '../results/inside.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Moment, wallClock } from './clock.ts';
import { type CourseOptions, type FillCourse, fillCourse, firstReached, type Never, toBeFilled } from './course.ts';
import { FILL_MARK, type Mark, ownMarks, surfaceAt } from './marks.ts';
import type { Stretch } from './schedule.ts';
import { type Upstairs, upstairsOf } from './upstairs.ts';

export interface FillOptions extends CourseOptions {
  /** Levels to be told of, in place of shelves, quarters and the fill mark. */
  readonly marks?: readonly Mark[] | undefined;
}

export interface HosePlan {
  readonly name: string;
  /** m³/s */
  readonly flow: number;
  readonly by: 'bucket' | 'pressure';
  readonly stretches: readonly { readonly from: Moment; readonly to: Moment | null }[];
  /** Given until the pond is full, m³; null where it never is. */
  readonly volume: number | null;
  /** What its meter then reads, m³; null without one. */
  readonly meter: number | null;
}

export interface MarkReached extends Mark {
  /** When the pond first stands there; the fill mark with the pump running, where it is started; null: never. */
  readonly reached: Moment | null;
  /** Run in by then by all hoses, m³. */
  readonly volume: number | null;
  /** Each hose's meter by then, m³, in the order of `hoses`; null without one. */
  readonly meters: readonly (number | null)[];
  /** Open surface there, m²: ×0.01 m the volume of a centimeter, ×0.0254 m of an inch. */
  readonly surface: number;
}

/** Plain data, SI. */
export interface FillPlan {
  readonly starts: string;
  readonly fillMark: number;
  /** The first hose is opened; null where none ever is. */
  readonly open: Moment | null;
  /** The pond stands at its mark and the hose is to be shut; null: never. */
  readonly full: Moment | null;
  readonly never: Never | null;
  /** Seconds from opening to full. */
  readonly lasts: number | null;
  /** Run in by all hoses until full, m³. */
  readonly volume: number | null;
  /** Of that, evaporated and seeped away meanwhile, m³. */
  readonly lost: number | null;
  readonly hoses: readonly HosePlan[];
  readonly marks: readonly MarkReached[];
  /** What the pump takes upstairs, where it is started; null where it is not, or its level is never reached. */
  readonly upstairs: Upstairs | null;
  /** Levels of pond and vault, m, and water run in, m³, until full, or as long as it was looked at. */
  readonly series: {
    readonly t: number[];
    readonly pond: number[];
    readonly vault: number[];
    readonly volume: number[];
  };
}

/** Rows of the series, beside those at turns and marks. */
const ROWS = 240;

/**
 * How a pond comes to its fill mark by the file's hoses: level against time, the clock, the water and the meters at
 * each mark. Undefined where the site has no fill mark or no hose that gives anything.
 *
 * @throws RunFailure where the march fails
 */
export function fillPlan(s: Scenario, options: FillOptions = {}): FillPlan | undefined {
  const { fillMark } = s.pond;
  if (fillMark === undefined || !s.hoses.some(({ flow }) => flow > 0)) return undefined;
  const course = fillCourse(s, fillMark, options);
  const { schedule, record, full } = course;
  const moment = (t: number): Moment => ({ t, clock: wallClock(s.starts, t, options.zone) });
  const { opened } = schedule;
  const marks = (options.marks ?? ownMarks(s, fillMark, pondStart(toBeFilled(s)))).map((mark) =>
    reach(s, course, mark, moment),
  );
  const waterAt = (t: number): number => {
    const volumes = new Float64Array(course.network.size);
    volumesAt(record, t, volumes);
    return volumes.reduce((sum, v) => sum + v, 0);
  };
  return {
    starts: s.starts,
    fillMark,
    open: Number.isFinite(opened) ? moment(opened) : null,
    full: full === undefined ? null : moment(full),
    never: course.never ?? null,
    lasts: full === undefined ? null : Math.max(0, full - opened),
    volume: full === undefined ? null : schedule.givenByAll(full),
    lost: full === undefined ? null : schedule.givenByAll(full) + waterAt(0) - waterAt(full),
    hoses: s.hoses.map(({ name, flow, meter, by }, i) => ({
      name,
      flow,
      by: by ?? 'bucket',
      stretches: schedule.stretches[i].filter(({ from }) => from < (full ?? record.time(record.length - 1))).map(timed),
      volume: full === undefined ? null : schedule.given(i, full),
      meter: full === undefined || meter === undefined ? null : meter + schedule.given(i, full),
    })),
    marks,
    upstairs: upstairsOf(s, course, options.pumpAt, moment) ?? null,
    series: seriesOf(course, marks),
  };

  function timed({ from, to }: Stretch): HosePlan['stretches'][number] {
    return { from: moment(from), to: Number.isFinite(to) ? moment(to) : null };
  }
}

function reach(s: Scenario, course: FillCourse, mark: Mark, moment: (t: number) => Moment): MarkReached {
  const { network, schedule, record, full } = course;
  const { basins, pond } = network.parts;
  const first = firstReached(record, [pond], volumeAt(basins[pond].storage, mark.level), 0);
  // With the pump started underway the mark counts when the pond has come back to it.
  const isFull = mark.name === FILL_MARK || mark.level === s.pond.fillMark;
  const t = isFull || (full !== undefined && first !== undefined && first > full) ? (isFull ? full : undefined) : first;
  return {
    ...mark,
    reached: t === undefined ? null : moment(t),
    volume: t === undefined ? null : schedule.givenByAll(t),
    meters: s.hoses.map(({ meter }, i) =>
      t === undefined || meter === undefined ? null : meter + schedule.given(i, t),
    ),
    surface: surfaceAt(s, mark.level),
  };
}

function seriesOf(
  { record, network, schedule, full, pumpOn }: FillCourse,
  marks: readonly MarkReached[],
): FillPlan['series'] {
  const end = full ?? record.time(record.length - 1);
  const evenly = Array.from({ length: ROWS + 1 }, (_, i) => (end * i) / ROWS);
  const special = [...schedule.turns, pumpOn ?? 0, ...marks.flatMap(({ reached }) => reached?.t ?? [])];
  const t = [...new Set([...evenly, ...special])].filter((each) => each >= 0 && each <= end).sort((a, b) => a - b);
  const { basins, pond, circuit } = network.parts;
  const volumes = new Float64Array(network.size);
  const rows = t.map((each) => {
    volumesAt(record, each, volumes);
    return [pond, circuit.vault].map((i) => levelOf(basins[i].storage, volumes[i]));
  });
  return {
    t,
    pond: rows.map(([level]) => level),
    vault: rows.map(([, level]) => level),
    volume: t.map((each) => schedule.givenByAll(each)),
  };
}
