/** Sites whose truth is invented: drawn from what is not known of them, and read with a ruler's errors. */
import { readFileSync } from 'node:fs';
import { type Random, randomStream } from '../../sim/random.ts';
import { shownBy } from '../../sim/readings/model.ts';
import { NINETY } from '../../sim/readings/prior.ts';
import { BUCKET, RULER, type SiteReading, STOPWATCH } from '../../sim/readings/reading.ts';
import { siteAt, type Unknown, unknownsOf } from '../../sim/readings/unknowns.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { firstStart } from '../../sim/trials/firstStart.ts';

export function fileOf(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8'));
}

export function siteOf(name: string): Scenario {
  const reading = readScenario(JSON.stringify(fileOf(name)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** Standard normal figures: Box & Muller (1958), Ann. Math. Stat. 29. */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export interface Truth {
  readonly site: Scenario;
  readonly unknowns: readonly Unknown[];
  readonly u: readonly number[];
}

/** A site as it might really be, by a seed: all that is not known of it drawn from its spread. */
export function truthOf(s: Scenario, seed: number): Truth {
  const random = randomStream(`truth ${seed}`, s.title);
  const unknowns = unknownsOf(s);
  const u = unknowns.map(() => normal(random));
  return { site: siteAt(s, unknowns, u), unknowns, u };
}

/** What a person reads on the true site, each reading off by its own error. */
export function readOn(site: Scenario, what: readonly string[], seed: number): SiteReading[] {
  const random = randomStream(`readings ${seed}`, site.title);
  const off = (error: number): number => (normal(random) * error) / NINETY;
  const shown = shownBy(site);
  return what.map((each): SiteReading => {
    if (each === 'fall') {
      const trial = firstStart(site)!;
      return { kind: 'fall', fall: trial.start - trial.lowestPond.value + off(RULER) };
    }
    if (each !== 'top feed') return { kind: 'head', over: each.slice(5), head: shown[each] + off(RULER) };
    const volume = 0.01;
    const seconds = (volume * (1 + off(BUCKET))) / shown[each] + off(STOPWATCH);
    return { kind: 'bucket', volume, seconds };
  });
}
