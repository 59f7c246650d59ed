/** What the worker does for the inside of the filter. */
import { balanceOrFailure } from '../../sim/balance.ts';
import { care } from '../../sim/clogging/care.ts';
import type { DyeTest } from '../../sim/dye/answer.ts';
import { dyeTest } from '../../sim/dye/dyeTest.ts';
import { watchDye } from '../../sim/dye/watch.ts';
import { readScenario } from '../../sim/index.ts';
import { bringsAnything, broughtColumns } from '../../sim/pondwater/columns.ts';
import { compareWater, type WaterCase } from '../../sim/pondwater/compare.ts';
import { pondWater } from '../../sim/pondwater/figures.ts';
import { depositsAt } from '../../sim/results/deposits.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import type {
  BroughtRequest,
  CareRequest,
  CleanerRequest,
  DepositsRequest,
  DyeIn,
  DyeRequest,
} from './filter-asked.ts';
import type { Display, Given } from './protocol.ts';

/** The dye poured, kg: a gram, of which only shares are shown. */
const POURED = 1e-3;
/** Dye is watched until so many times its nine tenths have passed, and so long at the least, s. */
const WATCHED = 1.5;
const LEAST = 60;
/** Moments of a run at which its deposits are told. */
const MOMENTS = 200;

export function dyeGiven({ text, display, at, kept }: DyeRequest): Given {
  return ofRun(text, display, (s) => {
    const now = pourIn(s, at);
    const there = kept && pourKept({ ...kept.scenario, display: s.display }, kept.at);
    // As long as nearly all of either takes; where nothing flows, as long as dye is watched at the least.
    const all = [now, there].flatMap((pour) => (pour?.test.fed ? [Math.max(LEAST, WATCHED * pour.test.t90)] : []));
    const lasts = all.length > 0 ? Math.max(...all) : undefined;
    return { kind: 'dye', ...watched(now, lasts), kept: there && watched(there, lasts) };
  });
}

/** Dye about to be watched in the run of a site. */
interface Pour {
  readonly s: Scenario;
  readonly record: RunRecord;
  readonly at: number;
  readonly test: DyeTest;
}

function pourIn(s: Scenario, at: number): Pour {
  const { record } = run(s);
  return { s, record, at, test: dyeTest(s, at, record) };
}

/** The case kept must not take the present one's dye along where it has no run. */
function pourKept(s: Scenario, at: number): Pour | null {
  try {
    return pourIn(s, at);
  } catch (error) {
    if (error instanceof RunFailure) return null;
    throw error;
  }
}

const watched = ({ s, record, at, test }: Pour, lasts: number | undefined): DyeIn => ({
  test,
  watch: watchDye(s, record, at, POURED, lasts === undefined ? {} : { until: at + lasts }),
});

/** The deposit in each layer over a run, m³. */
export function depositsGiven({ text }: DepositsRequest): Given {
  return ofRun(text, undefined, (s) => {
    const { record } = run(s);
    const end = record.time(record.length - 1);
    const t = Float64Array.from({ length: MOMENTS + 1 }, (_, i) => (end * i) / MOMENTS);
    const layers: Record<string, Float64Array> = {};
    t.forEach((each, i) => {
      for (const [name, held] of Object.entries(depositsAt(record, each))) {
        layers[name] ??= new Float64Array(t.length);
        layers[name][i] = held;
      }
    });
    return { kind: 'deposits', t, layers };
  });
}

/** A site whose water brings nothing is not run for it. */
export function broughtGiven({ scenario, t }: BroughtRequest): Given {
  if (!bringsAnything(scenario)) return { kind: 'brought', columns: [] };
  return orFault(() => ({ kind: 'brought', columns: broughtColumns(scenario, run(scenario).record, t) }));
}

export const careGiven = ({ text, display }: CareRequest): Given =>
  ofRun(text, display, (s) => ({ kind: 'care', care: care(s) }));

/** Told where at least one of the two takes waste out of the water. */
export function cleanerGiven({ sites: [kept, now] }: CleanerRequest): Given {
  const [a, b] = [waterCase('as kept', kept), waterCase('now', now)];
  const isTold = a && b && (a.water.halfLife !== null || b.water.halfLife !== null);
  return { kind: 'cleaner', says: isTold ? compareWater(a, b).says : '' };
}

function waterCase(name: string, s: Scenario): WaterCase | undefined {
  const found = balanceOrFailure(s);
  return found instanceof RunFailure ? undefined : { name, water: pondWater(s, found) };
}

function ofRun(text: string, display: Display | undefined, answer: (s: Scenario) => Given): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  return orFault(() => answer(display ? { ...reading.scenario, display } : reading.scenario));
}

function orFault(answer: () => Given): Given {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    return { kind: 'fault', message: `The run could not be computed to its end: ${error.words}.` };
  }
}
