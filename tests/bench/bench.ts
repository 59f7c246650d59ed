/** `npm run bench`: the solver's speed and errors, then the built page's; `-- page` the page alone, `-- --json` as data. */
import { cpus, loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { findBalance } from '../../sim/balance.ts';
import { startVolumes } from '../../sim/begin.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { pondInBalance, settingsOf, standingVolumes } from '../../sim/network/start.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { keptSite, stopPump } from '../../sim/trials/stop.ts';
import { eventErrors, levelErrors, marchOf, moments } from './accuracy.ts';
import { time } from './measure.ts';
import { pageLines, pageTable } from './page.ts';
import { againstPeer } from './peer.ts';
import { chain, worked } from './sites.ts';

/** One line of the report; errors in m and s against a run at a thousandth of the tolerance, ratio peer over ours. */
interface Case {
  name: string;
  ms: number;
  spread: number;
  steps: number | null;
  rates: number | null;
  error: number | null;
  worstLevel: number | null;
  events: number | null;
  peer: string | null;
  ratio: number | null;
}

const blank = { steps: null, rates: null, error: null, worstLevel: null, events: null, peer: null, ratio: null };

function runCase(name: string, s: Scenario, budget: number, tightness: number): Case {
  const network = assemble(s);
  const volumes = startVolumes(s, network);
  const timing = time(() => marchOf(s, network, volumes), budget);
  const run = marchOf(s, network, volumes);
  const tight = marchOf(s, network, volumes, tightness);
  const times = moments(s, run);
  const errors = levelErrors(run.record, tight.record, times);
  const { steps, rejected, rates } = run.work;
  return {
    ...blank,
    name,
    ...timing,
    steps: steps + rejected,
    rates,
    error: errors.pond,
    worstLevel: errors.any,
    events: eventErrors(run, tight),
  };
}

function rateCase(): Case {
  const s = worked('terrace-48h');
  const network = assemble(s);
  const { volumes } = findBalance(s, network, pondInBalance(s));
  network.apply({ ...settingsOf(s, network, 1), evaporation: 6e-3 / 86400 });
  const f = new Float64Array(network.size);
  const g = new Float64Array(network.quadratures);
  const y = Float64Array.from(volumes);
  const calls = 20_000;
  const timing = time(() => {
    for (let i = 0; i < calls; i++) {
      y[1] = volumes[1] * (1 + 1e-4 * (i % 7));
      network.rates(0, y, f, g);
    }
  });
  return { ...blank, name: 'rate', ms: timing.ms / calls, spread: timing.spread / calls, rates: 1 };
}

function stopCase(): Case {
  const kept = keptSite(worked('terrace-48h'));
  if (!kept) throw new Error('the worked site finds no running balance');
  return { ...blank, name: 'stop-trial', ...time(() => void stopPump(kept)) };
}

function answerCase(): Case {
  const s = worked('terrace-48h');
  return { ...blank, name: 'simulate', ...time(() => void simulate(s)) };
}

function peerCase(): Case {
  const s = worked('terrace-48h');
  const network = assemble(s);
  const volumes = standingVolumes(s, network, -0.1);
  return { ...blank, ...againstPeer(s, network, volumes) };
}

function allCases(): Case[] {
  return [
    runCase('terrace-48h', worked('terrace-48h'), 1500, 1e-3),
    runCase('terrace-365d', worked('terrace-365d'), 2500, 1e-2),
    ...[1, 10, 100, 200].map((n) => runCase(`chain-${n}`, chain(n), 1500, 1e-2)),
    rateCase(),
    stopCase(),
    answerCase(),
    peerCase(),
  ];
}

function table(cases: readonly Case[]): string {
  const figure = (x: number | null, digits = 3): string => (x === null ? '' : String(Number(x.toPrecision(digits))));
  const rows = cases.map((c) => [
    c.name,
    figure(c.ms),
    figure(c.spread, 2),
    figure(c.steps, 9),
    figure(c.rates, 9),
    figure(c.error, 2),
    figure(c.worstLevel, 2),
    figure(c.events, 2),
    c.peer ?? '',
    figure(c.ratio),
  ]);
  const head = ['case', 'ms', '±', 'steps', 'rates', 'pond m', 'level m', 'event s', 'peer', 'ratio'];
  const width = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i].length)));
  return [head, ...rows]
    .map((r) => r.map((cell, i) => (i === 0 ? cell.padEnd(width[i]) : cell.padStart(width[i]))).join('  '))
    .join('\n');
}

function perStep(cases: readonly Case[]): string {
  const cost = (name: string): number => {
    const c = cases.find((x) => x.name === name) as Case;
    return c.ms / (c.steps as number);
  };
  const ratio = cost('chain-200') / cost('chain-10') / (204 / 14);
  return `cost per step of 200 pools over that of 10, per basin: ${ratio.toFixed(2)} (1 is proportional)`;
}

const { values, positionals } = parseArgs({ options: { json: { type: 'boolean' } }, allowPositionals: true });
const machine = `${cpus()[0].model}, ${cpus().length} cores, Node ${process.version}, load ${loadavg()[0].toFixed(1)} at the start`;
const cases = positionals.includes('page') ? [] : allCases();
const head = cases.length > 0 ? [machine, table(cases), perStep(cases)] : [machine];
if (!values.json) console.log(head.join('\n'));
const page = await pageLines();
console.log(values.json ? JSON.stringify({ machine, cases, page }, null, 2) : `\n${pageTable(page)}`);
