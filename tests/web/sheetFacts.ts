/** Sites with everything a sheet is written from, as the page has it. */

import { type FillPlan, fillPlan } from '../../sim/fill/plan.ts';
import { balance, simulate } from '../../sim/index.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { stopsOf } from '../../sim/studies/quick.ts';
import { type Benchmark, edgeBenchmark, type SheetFacts } from '../../web/sheet/block.ts';

export type Display = Scenario['display'];

/** The site's file in either system of units, on a morning with its pond empty: a hose has something to fill. */
export function factsOf(text: string, display?: Display, benchmark?: Partial<Benchmark>): SheetFacts {
  const file = JSON.parse(text);
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const scenario = { ...reading.scenario, ...(display ? { display } : {}) };
  const { answer, record } = simulate(scenario);
  return {
    scenario,
    file,
    answer,
    balance: balance(scenario),
    stops: stopsOf(scenario, record) ?? null,
    fill: fillFromEmpty(scenario),
    benchmark: { ...edgeBenchmark(scenario), ...benchmark },
  };
}

function fillFromEmpty(s: Scenario): FillPlan | undefined {
  const empty = { ...s, start: 'standing', actions: [], pond: { ...s.pond, level: 'empty' } } as const;
  return fillPlan({ ...empty, vault: { ...s.vault, level: 'empty' } });
}

/** The text of a site with its first pool's stones replaced by so many. */
export function withStones(text: string, count: number): string {
  const file = JSON.parse(text);
  const pool = file.watercourse.find(({ kind }: { kind: string }) => kind === 'pool');
  const [first] = pool.stones;
  pool.stones = Array.from({ length: count }, (_, i) => ({
    ...first,
    name: `stone ${i + 1} by the old wall`,
    main: i === 0,
    crest: [
      [0, `${624 + i} mm`],
      ['0.3 m', `${622 + i} mm`],
    ],
  }));
  return JSON.stringify(file);
}
