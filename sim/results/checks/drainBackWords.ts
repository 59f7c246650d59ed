import { type Display, formatClock, formatDuration, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { FailedStop, PondRise, StopTroubles } from '../../trials/stop.ts';
import { lowestPoint } from '../../trials/trial.ts';
import { type Ways, waysOf } from '../../trials/ways.ts';
import { assumptionWords } from './assumptionWords.ts';
import type { Band } from './bands.ts';
import { called, type Marks, originWords } from './check.ts';

/** A rise or a volume under this is none, m and m³. */
const NO_RISE = 5e-5;
const NO_WATER = 5e-5;
/** A way that carries less than this share of all that comes back isn't named. */
const NAMED = 0.01;
/** From so long on a moment is told to the minute, s. */
const TAIL = 600;
const MINUTE = 60;
/** From here on 'nine tenths in' says more than the moment of a flat highest level. */
const FLAT = 3;

/**
 * 'rises 38 mm in 3 min 10 s and stays 64 mm below its edge'. Where the highest level is the end of a long tail, the time
 * in which nine tenths of the rise have come stands first.
 */
export function riseWords(r: PondRise, display: Display): string {
  if (r.rise < NO_RISE) return `does not rise and ${edgeWords(r, display)}`;
  // 'in' is a unit too.
  const within = display === 'us' ? 'within' : 'in';
  const rises = `rises ${formatLength(r.rise, display)}`;
  const took = r.highest.t - r.at;
  if (took <= FLAT * r.soon) return `${rises} ${within} ${formatDuration(took)} and ${edgeWords(r, display)}`;
  const soon = `nine tenths of it ${within} ${formatDuration(r.soon)}`;
  return `${rises}, ${soon}, highest after ${tailText(took)}, and ${edgeWords(r, display)}`;
}

/** The end of a long tail is flat: no second of it is the highest by more than rounding. */
const tailText = (took: number): string => formatDuration(took < TAIL ? took : MINUTE * Math.round(took / MINUTE));

function edgeWords(r: PondRise, display: Display): string {
  const piped = r.overflow > NO_WATER ? `, ${formatVolume(r.overflow, display)} going down the overflow pipe` : '';
  if (r.below >= 0) return `stays ${formatLength(r.below, display)} below its edge${piped}`;
  return (
    `runs over: it stands up to ${formatLength(-r.below, display)} above the lowest point of its edge, and ` +
    `${formatVolume(r.overRim, display)} are lost over it${piped}`
  );
}

/** How the pump is stopped where the check valve, if there is one, does what the file says: 'When the pump stops, the pond'. */
export function stopWords({ plumbing }: Scenario): string {
  switch (plumbing.main.checkValve.kind) {
    case 'sound':
      return 'When the pump stops with the check valve sound, the pond';
    case 'unknown':
      return 'When the pump stops with a check valve that holds, the pond';
    case 'none':
    case 'leaking':
      return 'When the pump stops, the pond';
  }
}

/**
 * 'With the check valve failed it rises 115 mm and runs over, 151 L being lost over its edge.' Where no valve holds
 * anyway there is nothing to add.
 */
export function failedWords({ plumbing, display }: Scenario, { trial, troubles }: FailedStop, from: string): string {
  const { kind } = plumbing.main.checkValve;
  if (kind === 'none' || kind === 'leaking') return '';
  const rises = trial.rise < NO_RISE ? 'does not rise' : `rises ${formatLength(trial.rise, display)}`;
  const ends =
    trial.below >= 0
      ? `stays ${formatLength(trial.below, display)} below its edge`
      : `runs over, ${formatVolume(trial.overRim, display)} being lost over its edge`;
  return `With the check valve failed${shutWords(troubles)} it ${rises}${from} and ${ends}.`;
}

/** Where the top valve is shut at the moment of the stop, that is said. */
export function shutWords({ topValve }: StopTroubles): string {
  return topValve === 0 ? ' and the top valve shut at that moment' : '';
}

/** '(25 mm wanted at the least, 50 mm better: our default)'. */
export function marksWords({ fail, pass, origin }: Marks, display: Display): string {
  return (
    `(${formatLength(fail, display)} wanted at the least, ${formatLength(pass, display)} better: ` +
    `${originWords(origin)})`
  );
}

/** How much came back to the pond and by which ways, as a sentence with its lead; '' where next to nothing did. */
export function waysWords(s: Scenario, trial: PondRise, lead = ''): string {
  const ways = waysOf(s, trial);
  const falls = ways.stones + ways.stream + ways.seepage - ways.pumped;
  const all = falls + ways.main;
  if (all < NO_WATER) return '';
  const { display } = s;
  const parts = [
    part(ways.main, all, display, `through the main line${siphonedWords(s, trial, ways, all)}`),
    part(falls - ways.seepage, all, display, downWords(s)),
    part(ways.seepage, all, display, 'seeping beneath the stones'),
  ].filter((p) => p !== undefined);
  const whole = `${lead}${formatVolume(all, display)} come back`;
  if (parts.length === 1) return `${whole} ${parts[0].how}.`;
  const each = parts.map(({ volume, how }) => `${volume} ${how}`);
  return `${whole}: ${each.slice(0, -1).join(', ')} and ${each.at(-1)}.`;
}

function part(volume: number, all: number, display: Display, how: string): { volume: string; how: string } | undefined {
  return volume < NAMED * all ? undefined : { volume: formatVolume(volume, display), how };
}

/** ' (91 gal of it out of the filter)': what the main line drained. */
function siphonedWords(
  { display }: Scenario,
  { record }: PondRise,
  { bottomFeed, topOutlet }: Ways,
  all: number,
): string {
  const { basins, circuit } = record.network.parts;
  const parts = [
    part(bottomFeed, all, display, `of it out of ${called(basins[circuit.bottom].name)}`),
    part(topOutlet, all, display, 'of it siphoned through the top outlet'),
  ].flatMap((p) => (p ? [`${p.volume} ${p.how}`] : []));
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

function downWords(s: Scenario): string {
  const last = s.watercourse.at(-1);
  if (last === undefined) return 'over the spillway lip';
  return last.kind === 'pool' ? 'over the stones' : `down ‘${last.name}’`;
}

/** How good the figure is and what it rests on most. */
export function bandWords(s: Scenario, { band, most }: Band): string {
  const good = `The figure is good to ± ${formatLength(band, s.display)}`;
  return most && most.moves > band / 3
    ? `${good}, most of it for ${assumptionWords(s, most.assumption)}, which is assumed.`
    : `${good}.`;
}

/** What others keep: a public pool's surge storage, an embankment's freeboard. */
export function thumbWords(display: Display): string {
  const [pool, bank] = display === 'us' ? ['1 5/8 in', '1 ft'] : ['41 mm', '0.3 m'];
  return (
    `Beside it: public pools keep ${pool} over their whole surface for water in transit and bathers ` +
    `(ISPSC 2018 §315.4.1); the ${bank} of NRCS 378 is for embankments.`
  );
}

/** Where the float keeps the pond higher than its mark, that is said. */
export function keptWords(s: Scenario, level: number): string {
  const mark = s.pond.fillMark;
  if (mark === undefined || level - mark < 5e-4) return '';
  const over = lowestPoint(s.pond.rim.crest) <= level ? ', at its very edge' : '';
  return `The float keeps the pond ${formatLength(level - mark, s.display)} above its mark${over}.`;
}

/** 'In the run, the pump stopped at 12:00, the pond'. */
export function runWords(s: Scenario, { at, record }: PondRise): string {
  const { kind } = record.settingsAt(record.rowAt(at)).check;
  const failed = kind === 'none' && s.plumbing.main.checkValve.kind !== 'none' ? ' and its check valve failed' : '';
  return `In the run, the pump stopped at ${formatClock(s.starts, at)}${failed}, the pond`;
}

/** Sentences that say something, one after the other. */
export function sentences(...parts: readonly string[]): string {
  return parts.filter((text) => text !== '').join(' ');
}
