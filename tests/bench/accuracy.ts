import { levelOf } from '../../sim/laws/storage.ts';
import { March } from '../../sim/march.ts';
import type { Network } from '../../sim/network/network.ts';
import { settingsOf } from '../../sim/network/start.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** A march over a span from the file's start, at a multiple of the tolerance. */
export function marchOf(s: Scenario, network: Network, volumes: Float64Array, tolerance = 1): March {
  const speed = s.pump.running ? 1 : 0;
  const march = new March(s, network, {
    settings: settingsOf(s, network, speed),
    volumes,
    actions: s.actions,
    weather: true,
    cutOut: true,
    pumpSpeed: speed,
    tolerance,
  });
  march.to(s.span);
  march.finish();
  return march;
}

/** Moments at which a run is held against a tight one: evenly, and seconds to hours after its first switches. */
export function moments(s: Scenario, march: March): number[] {
  const even = Array.from({ length: 60 }, (_, i) => ((i + 1) * s.span) / 60);
  const after = [0.5, 2, 5, 10, 30, 60, 300, 1800, 7200, 14400];
  const switches = [0, ...march.events.slice(0, 3).map((e) => e.t)];
  return [...even, ...switches.flatMap((t) => after.map((d) => t + d))].filter((t) => t <= s.span).slice(0, 100);
}

/** Largest differences of levels between two records at given times, m: of the pond, and of any basin. */
export function levelErrors(run: RunRecord, tight: RunRecord, times: readonly number[]): { pond: number; any: number } {
  const { basins, pond } = run.network.parts;
  const [a, b] = [new Float64Array(basins.length), new Float64Array(basins.length)];
  let [atPond, any] = [0, 0];
  for (const t of times) {
    volumesAt(run, t, a);
    volumesAt(tight, t, b);
    basins.forEach(({ storage }, i) => {
      const miss = Math.abs(levelOf(storage, a[i]) - levelOf(storage, b[i]));
      any = Math.max(any, miss);
      if (i === pond) atPond = Math.max(atPond, miss);
    });
  }
  return { pond: atPond, any };
}

/** Largest difference between the times of the same events, s; Infinity where the logs differ. */
export function eventErrors(run: March, tight: March): number {
  if (run.events.length !== tight.events.length) return Number.POSITIVE_INFINITY;
  return run.events.reduce(
    (most, e, i) =>
      e.what === tight.events[i].what ? Math.max(most, Math.abs(e.t - tight.events[i].t)) : Number.POSITIVE_INFINITY,
    0,
  );
}
