/** Where the time between a move and its frame goes, from the browser's own trace. */

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly cat: string;
  readonly pid: number;
  readonly tid: number;
  /** µs. */
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string; readonly data?: { readonly startTime?: number } };
}

/** ms a move, means over the moves traced. */
export interface Shares {
  readonly moves: number;
  readonly script: number;
  readonly style: number;
  readonly layout: number;
  readonly paint: number;
  readonly garbage: number;
  /** The worker's own thread, which computes meanwhile. */
  readonly worker: number;
  /** From the move until what was painted last is on the screen, rastered and presented; median. */
  readonly drawn: number;
}

/** What the trace has to tell of. */
export const categories = ['devtools.timeline', 'blink.user_timing', 'v8', 'cc', 'benchmark', 'viz'];

type Kind = 'script' | 'style' | 'layout' | 'paint' | 'garbage' | 'none';

const kinds: Record<string, Kind> = {
  UpdateLayoutTree: 'style',
  RecalcStyle: 'style',
  Layout: 'layout',
  PrePaint: 'paint',
  UpdateLayerTree: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
  CompositeLayers: 'paint',
  MinorGC: 'garbage',
  MajorGC: 'garbage',
  RunTask: 'none',
};

const kindOf = (name: string): Kind => kinds[name] ?? (name.startsWith('V8.GC') ? 'garbage' : 'script');

/** ms of each kind on one thread within the windows; an event's own time is what its children do not take. */
function ownTimes(events: readonly TraceEvent[], windows: readonly Window[]): Record<Kind, number> {
  const sum: Record<Kind, number> = { script: 0, style: 0, layout: 0, paint: 0, garbage: 0, none: 0 };
  const open: { end: number; kind: Kind }[] = [];
  const within = (ts: number): boolean => windows.some(([from, to]) => ts >= from && ts < to);
  for (const { name, ts, dur = 0 } of events
    .filter(({ ph, cat }) => ph === 'X' && /devtools\.timeline|v8/.test(cat))
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))) {
    if (!within(ts)) continue;
    while (open.length > 0 && open.at(-1)!.end <= ts) open.pop();
    const parent = open.at(-1);
    const kind = kindOf(name);
    if (parent) sum[parent.kind] -= dur / 1000;
    sum[kind] += dur / 1000;
    open.push({ end: ts + dur, kind });
  }
  return sum;
}

type Window = readonly [from: number, to: number];

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

const sorted = (events: readonly TraceEvent[]): TraceEvent[] => [...events].sort((a, b) => a.ts - b.ts);

/** Each move with the last paint before the next move, µs. */
function windowsOf(events: readonly TraceEvent[]): Window[] {
  const marks = sorted(events.filter(({ name }) => name.startsWith('bench ')));
  const moves = marks.filter(({ name }) => name === 'bench moved');
  return moves.flatMap(({ ts }, i) => {
    const next = moves[i + 1]?.ts ?? Number.POSITIVE_INFINITY;
    const painted = marks.findLast((mark) => mark.name === 'bench painted' && mark.ts > ts && mark.ts < next);
    return painted ? [[ts, painted.ts] as const] : [];
  });
}

export function sharesOf({ traceEvents: all }: { traceEvents: readonly TraceEvent[] }): Shares {
  const pid = all.find(({ name }) => name === 'bench moved')?.pid;
  const ours = all.filter((event) => event.pid === pid);
  const threads = (word: string): number[] =>
    ours.filter(({ name, args }) => name === 'thread_name' && args?.name?.includes(word)).map(({ tid }) => tid);
  const on = (word: string): TraceEvent[] => {
    const ids = threads(word);
    return ours.filter(({ tid }) => ids.includes(tid));
  };
  const windows = windowsOf(ours);
  const main = ownTimes(on('CrRendererMain'), windows);
  const worker = ownTimes(on('DedicatedWorker'), windows);
  const ends = (name: string, ph: string) => sorted(ours.filter((event) => event.name === name && event.ph === ph));
  const activated = ends('EndActivateToSubmitCompositorFrame', 'b');
  const presented = ends('SwapEndToPresentationCompositorFrame', 'e');
  // What was painted is rastered before it is activated, and then presented with the next frame.
  const drawn = windows.flatMap(([from, to]) => {
    const active = activated.find(({ ts }) => ts >= to)?.ts ?? Number.POSITIVE_INFINITY;
    const frame = presented.find(({ ts }) => ts >= active);
    return frame === undefined ? [] : [(frame.ts - from) / 1000];
  });
  const each = (ms: number): number => ms / windows.length;
  return {
    moves: windows.length,
    script: each(main.script),
    style: each(main.style),
    layout: each(main.layout),
    paint: each(main.paint),
    garbage: each(main.garbage),
    worker: each(worker.script + worker.garbage),
    drawn: middle(drawn),
  };
}
