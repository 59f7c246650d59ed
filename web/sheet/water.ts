/** What happens with water on the first days: the hose, the first start, the stop test. */
import type { FillPlan } from '../../sim/fill/plan.ts';
import { formatDuration, formatFlow, formatLength, formatVolume } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { StopFigures, Stops } from '../../sim/studies/quick.ts';
import { elevationFigure } from '../section/labels/figures.ts';
import { type Block, edgeOf, type SheetFacts, saidBy } from './block.ts';

const NEVER: Readonly<Record<NonNullable<FillPlan['never']>, string>> = {
  weak: 'the hoses give less than the site loses',
  shut: 'all hoses are shut before',
  long: 'it takes longer than a year',
  starves: 'the pump draws air before',
};

export function hoseBlock({ scenario: s, fill, benchmark }: SheetFacts): Block {
  const title = 'Hose';
  if (!fill) return { title, says: ['No filling was computed: it takes a hose with its flow, and a fill mark.'] };
  if (!fill.full) {
    const why = fill.never === null ? 'not within the time looked at' : NEVER[fill.never];
    return { title, says: [`By these hoses the pond never comes to its mark: ${why}.`] };
  }
  if (!fill.lasts) return { title, says: ['The pond stands at its fill mark already: no hose is opened.'] };
  const meters = fill.hoses.map(({ meter }) => meter).filter((meter) => meter !== null);
  const rows = fill.marks.map(({ name, level, reached, volume, meters: read }) => [
    `${name}, ${elevationFigure(level - benchmark.elevation, s.display)}`,
    reached?.clock ?? 'never',
    volume === null ? '' : formatVolume(volume, s.display),
    ...(meters.length > 0
      ? [read.map((each) => (each === null ? '' : formatVolume(each, s.display))).join(' · ')]
      : []),
  ]);
  return {
    title,
    heads: ['pond at', 'clock', 'run in', ...(meters.length > 0 ? ['meter'] : [])],
    rows,
    says: [
      `Open ${fill.open?.clock ?? 'never'}, shut ${fill.full.clock}: ${formatDuration(fill.lasts)}, ${formatVolume(fill.volume ?? 0, s.display)}.`,
      ...fill.hoses.map((hose) => hoseWords(hose, s)),
      'A first fill is never left alone.',
    ],
  };
}

function hoseWords({ name, flow, by, stretches }: FillPlan['hoses'][number], s: Scenario): string {
  const times =
    stretches.length > 1
      ? `, open ${stretches.map(({ from, to }) => `${from.clock} to ${to?.clock ?? 'the end'}`).join(', ')}`
      : '';
  const bound = by === 'pressure' ? ' at the most (by its pressure: test it with a bucket)' : '';
  return `${name === 'hose' ? 'Hose' : `‘${name}’`}: ${formatFlow(flow, s.display)}${bound}${times}.`;
}

/** First start, in order: the mark comes last. */
export function firstStartBlock(facts: SheetFacts): Block {
  const { scenario: s, fill, benchmark } = facts;
  const { fillMark } = s.pond;
  const title = 'First start, in this order';
  if (fillMark === undefined) return { title, says: ['No fill mark is given: set one before the first start.'] };
  const at = (z: number): string => elevationFigure(z - benchmark.elevation, s.display);
  const up = fill?.upstairs;
  const check = saidBy(facts, 'first start');
  return {
    title,
    steps: [
      `Fill the pond to ${at(up?.level ?? fillMark)}${up ? ` (${up.on.clock})` : ', the fill mark'}.`,
      `Pump on, somebody at the vault: off again when its water is at ${at(s.pump.minimum)}, below which it draws air.`,
      up
        ? `The pond falls ${formatLength(up.falls, s.display)} with the hose running: filter, pools and pipe take their water.`
        : (check ?? 'The pond falls while filter, pools and pipe take their water: how far was not computed.'),
      up && up.more !== null
        ? `Add ${formatVolume(up.more, s.display)}, until it stands at ${at(fillMark)} with the pump running.`
        : `Add water until it stands at ${at(fillMark)} with the pump running.`,
      'Only now mark the level on the wall.',
    ],
  };
}

/** The site's own stop in still weather; a stop within the run may have had rain. */
function testedStop({ asIs, sound, failed }: Stops, { plumbing }: Scenario): StopFigures {
  if (asIs.where === 'trial') return asIs;
  const { kind } = plumbing.main.checkValve;
  return kind === 'sound' || kind === 'unknown' ? sound : failed;
}

/** What a rise may be at the most, m, on a ruler: rounded up, and at least a step more than what is expected. */
export function mostOf(rise: number, band: number, { display }: Scenario): number {
  const step = display === 'us' ? 0.0254 / 8 : 0.001;
  return step * Math.max(Math.ceil((rise + band) / step), Math.round(rise / step) + 1);
}

export function stopTestBlock(facts: SheetFacts): Block {
  const { scenario: s, stops, answer, benchmark } = facts;
  const title = 'Stop test, before the liner is trimmed';
  if (!stops)
    return {
      title,
      says: ['No stop was computed; make the test all the same: pump off, and watch how far the pond rises.'],
    };
  const length = (value: number): string => formatLength(value, s.display);
  const stop = testedStop(stops, s);
  const band = answer?.checks.find(({ name }) => name === 'drain-back')?.band ?? 0;
  const holds = s.plumbing.main.checkValve.kind === 'sound' || s.plumbing.main.checkValve.kind === 'unknown';
  const below =
    stop.below >= 0 ? `${length(stop.below)} below its edge` : `${length(-stop.below)} over its edge: it runs over`;
  const rises =
    stop.rise < 5e-5
      ? 'does not rise'
      : `rises ${length(stop.rise)}, nine tenths of it within ${formatDuration(stop.soon)}, all within ${formatDuration(stop.took)}`;
  const valve = holds ? ` With a check valve that does not hold it would be ${length(stops.failed.rise)}.` : '';
  return {
    title,
    steps: [
      `Pond at ${elevationFigure(stops.level - benchmark.elevation, s.display)}, pump running for an hour: pump off, hose shut.`,
      `Expect: the pond ${rises}; it stays ${below}.`,
      `More than ${length(mostOf(stop.rise, band, s))}: pump on again, do not trim. Look for a leaking check valve, a stone set high, a pool larger than planned; then lower the mark or raise the edge by what is more, and test again.${valve}`,
      `Trim only where ${length(stops.fail)} at the least, better ${length(stops.pass)}, stay below the edge (${elevationFigure(edgeOf(s) - benchmark.elevation, s.display)}).`,
    ],
  };
}
