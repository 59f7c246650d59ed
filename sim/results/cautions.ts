import type { Balance } from '../balance.ts';
import { areaAt, makeStorage } from '../laws/storage.ts';
import { formatArea, formatFine, formatLength, formatPercent, formatVolume } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { standingMoves } from '../trials/standing.ts';
import type { RunAnswer } from './answer.ts';
import { lowestOf } from './checks/variants.ts';
import { RunFailure } from './failure.ts';
import { hopelessness } from './hopeless.ts';

const DAY = 86400;
/** A standing start that moves more than this in a minute is none, m. */
const STILL = 1e-3;
/** A run that loses more than this over an edge is told, m³. */
const SPILL = 1e-3;
/** Below this head surface tension matters, m. */
const THIN = 0.02;
/** Heads under this are rounding, m. */
const NOTHING = 1e-6;
/** Of a stone's flow: more splash than this is worth a word. */
const SPLASHY = 1e-3;
/** A filter wider than media and gap by more than this share holds water that is counted nowhere. */
const BESIDE = 1.05;
/** Media and gap that ask for more than the filter has by this share contradict it. */
const TIGHT = 1.01;
/** Edges nearer to the fill mark than this are in reach of waves and settlement, m. */
const NEAR = 0.075;

/**
 * What must be told before the checks: first why a site can't work or has no running balance, then what this site's
 * figures rest on. Sentences in the display's units.
 *
 * @param found the running balance, or why there is none
 */
export function cautionsOf(
  s: Scenario,
  found: Balance | RunFailure,
  run: Pick<RunAnswer, 'levels' | 'ledger'>,
): string[] {
  const balance = found instanceof RunFailure ? undefined : found;
  const unbalanced =
    found instanceof RunFailure
      ? `No running balance is found (${found.words})${s.start === 'running' ? ', so the run starts standing' : ''}; the checks that rest on it are left out.`
      : undefined;
  const hopeless = hopelessness(s, balance, run);
  const sentences = [
    ...(s.start === 'running' ? [unbalanced, hopeless] : [hopeless, unbalanced]),
    spilled(s, run),
    moving(s),
    balance && starving(s, balance),
    balance && thinHeads(s, balance),
    ...(balance ? splashes(s, balance) : []),
    beside(s),
    nearEdge(s),
    s.weather.rain &&
      'Rain by month falls evenly here: real storms spill more, and dry weeks ask more of the autofill.',
  ];
  return sentences.filter((sentence) => sentence !== undefined);
}

/** What the run itself lost over edges: its checks ask the site, not this run. */
function spilled({ display }: Scenario, { ledger }: Pick<RunAnswer, 'ledger'>): string | undefined {
  const { rim, filterRim, edges } = ledger.out;
  const over: [number, string][] = [
    [rim, 'the pond’s'],
    [filterRim, 'the filter’s'],
    [edges, 'those of pools and streams'],
  ];
  const named = over.filter(([volume]) => volume > SPILL);
  if (named.length === 0) return undefined;
  return `This run loses water over edges: ${named.map(([volume, whose]) => `${formatVolume(volume, display)} over ${whose}`).join(', ')}.`;
}

function moving(s: Scenario): string | undefined {
  if (s.start !== 'standing' || s.pond.level === 'empty') return undefined;
  try {
    const { basin, change } = standingMoves(s);
    if (Math.abs(change) <= STILL) return undefined;
    return (
      `The start is not at rest: with the pump off the level in ${called(basin)} moves ` +
      `${formatLength(Math.abs(change), s.display)} within a minute. "start": "overnight" begins where the site comes to rest.`
    );
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

function called(basin: string): string {
  if (basin === 'riser') return 'the pipe';
  return ['pond', 'vault', 'filter'].includes(basin) ? `the ${basin}` : `‘${basin}’`;
}

function starving(s: Scenario, { answer }: Balance): string | undefined {
  const short = s.pump.minimum - answer.levels.vault;
  if (short <= 0 || answer.duty.flow <= 0) return undefined;
  return (
    `With the pump running the vault stands ${formatLength(short, s.display)} under the pump’s minimum: it draws air ` +
    'and gives less than its curve.'
  );
}

function thinHeads(s: Scenario, { answer }: Balance): string | undefined {
  const heads: [string, number][] = Object.entries(answer.stones).map(([name, stone]) => [`‘${name}’`, stone.head]);
  if (s.filter) heads.unshift(['the filter’s lip', answer.levels.filter - lowestOf(s.filter.lip.crest)]);
  const thin = heads.filter(([, head]) => head > NOTHING && head < THIN).map(([name]) => name);
  if (thin.length === 0) return undefined;
  return (
    `Less than ${formatLength(THIN, s.display)} of water stands over ${thin.join(', ')}: surface tension counts there, ` +
    'and flows are good to 10 %.'
  );
}

function splashes(s: Scenario, { answer }: Balance): string[] {
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  return stones
    .filter((stone) => stone.splash > SPLASHY)
    .map((stone) => {
      const lost = stone.splash * Math.max(0, answer.flows[stone.name]) * DAY;
      return (
        `A splash of ${formatPercent(stone.splash)} at ‘${stone.name}’ is ${formatVolume(lost, s.display)} a day; no ` +
        'measured value is published for garden falls.'
      );
    });
}

function beside(s: Scenario): string | undefined {
  const media = s.filter?.media;
  if (!s.filter || !media) return undefined;
  const height = media.layers.reduce((sum, l) => sum + l.thickness, 0);
  const whole = areaAt(makeStorage(s.filter.profile), media.bottom + height / 2);
  const used = media.area + media.perimeter * media.gap;
  if (used > TIGHT * whole)
    return (
      `Media of ${formatArea(media.area, s.display)} and a gap of ${formatFine(media.gap, s.display)} round them ask for ` +
      `${formatArea(used, s.display)}, but the filter has ${formatArea(whole, s.display)}: one of the three is not as it was measured, and ` +
      'unless that is the filter, the contact time is shorter than told here.'
    );
  if (whole <= BESIDE * used) return undefined;
  return (
    `Beside the media and the gap round them ${formatArea(whole - used, s.display)} of the filter’s plan stand open: ` +
    'the water there is taken as standing, whatever really slips through.'
  );
}

function nearEdge(s: Scenario): string | undefined {
  const { fillMark, rim } = s.pond;
  if (fillMark === undefined) return undefined;
  const room = lowestOf(rim.crest) - fillMark;
  if (room >= NEAR) return undefined;
  return (
    `The liner’s edge lies ${formatLength(room, s.display)} above the fill mark; waves in a fresh wind stand ` +
    `${formatLength(0.015, s.display)} to ${formatLength(0.023, s.display)} high and an edge on fill settles ` +
    `${formatLength(0.005, s.display)} to ${formatLength(0.025, s.display)}, neither of which is computed.`
  );
}
