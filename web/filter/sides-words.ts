/** In what two cases of a filter differ, in words and figures. */
import {
  type Display,
  formatDuration,
  formatFine,
  formatFlow,
  formatLength,
  formatPercent,
} from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import type { Seen } from './explanation.ts';
import { type Passage, passageAt } from './passage.ts';

/** A figure of both cases. */
export interface Row {
  readonly name: string;
  readonly kept: string;
  readonly now: string;
}

export interface Differences {
  /** What slips round in both, as one sentence. */
  readonly lead: string;
  /** What is set otherwise. */
  readonly set: string;
  readonly rows: readonly Row[];
}

/** Less than this is no difference. */
const SAME = 5e-4;

export function differencesOf(kept: Seen, now: Seen): Differences {
  const { display } = now.scenario;
  const [there, here] = [kept, now].map((each) => passageAt(each.scenario, each.moment, each.porosities));
  const row = (name: string, figure: (seen: Seen, passage: Passage | undefined) => string): Row => ({
    name,
    kept: figure(kept, there),
    now: figure(now, here),
  });
  const flow =
    (of: string) =>
    (seen: Seen): string =>
      formatFlow(seen.moment.flows[of] ?? 0, display);
  return {
    lead: leadWords(there?.share, here?.share),
    set: setWords(kept, now),
    rows: [
      row('goes round the media', (_, p) => (p?.share === undefined ? 'nothing goes up' : formatPercent(p.share))),
      row('time among the media', (_, p) => timeWords(p?.throughTime)),
      row('time in the gap', (_, p) => timeWords(p?.roundTime)),
      row('head, and what lifts them', (_, p) =>
        p ? `${formatFine(p.head, display)} of ${formatFine(p.lift, display)}` : 'none',
      ),
      row('bottom feed', flow('bottom feed')),
      row('top feed', flow('top feed')),
    ],
  };
}

const timeWords = (seconds: number | undefined): string =>
  seconds === undefined ? 'none goes there' : formatDuration(seconds);

function leadWords(kept: number | undefined, now: number | undefined): string {
  const said = (share: number | undefined): string =>
    share === undefined ? 'no water goes up' : `${formatPercent(share)} slips round the media`;
  if (kept === undefined && now === undefined) return 'In neither case does water go up through the media.';
  if (kept !== undefined && now !== undefined && Math.abs(now - kept) < SAME)
    return `${formatPercent(now)} slips round the media, in both cases.`;
  if (kept !== undefined && now !== undefined) return `As kept, ${said(kept)}; now ${formatPercent(now)} does.`;
  return `As kept, ${said(kept)}; now ${said(now)}.`;
}

/** What stands in the two files of the filter, its valves and its pump, told where it is not the same. */
function setWords(kept: Seen, now: Seen): string {
  const { display } = now.scenario;
  const before = new Map(settingsOf(kept, display));
  const after = new Map(settingsOf(now, display));
  const told = [...new Set([...before.keys(), ...after.keys()])]
    .filter((name) => before.get(name) !== after.get(name))
    .map((name) => `${name} ${after.get(name) ?? 'none'}, as kept ${before.get(name) ?? 'none'}`);
  if (told.length > 0) return `Set otherwise: ${told.join('; ')}.`;
  return isSame(kept.scenario, now.scenario)
    ? 'Nothing of the site is set otherwise.'
    : 'Filter, feeds and valves are set alike; something else of the site is not.';
}

const isSame = (a: Scenario, b: Scenario): boolean => JSON.stringify(a) === JSON.stringify(b);

function settingsOf({ scenario: s, porosities, moment }: Seen, display: Display): [name: string, figure: string][] {
  const { filter, plumbing } = s;
  const media = filter?.media;
  const told: [string, string][] = [];
  if (plumbing.bottomFeed) told.push(['bottom feed’s valve', formatPercent(plumbing.bottomFeed.valve)]);
  if (plumbing.topFeed) told.push(['top feed’s valve', formatPercent(plumbing.topFeed.valve)]);
  if (!media) return [...told, ['media', 'none']];
  told.push(['gap round the mats', formatFine(media.gap, display)]);
  media.layers.forEach(({ name, thickness, grain, porosity }, i) => {
    told.push([
      `‘${name}’`,
      [formatLength(thickness, display), ...(grain === undefined ? [] : [`${formatFine(grain, display)} grain`])].join(
        ', ',
      ),
    ]);
    const left = porosities?.[i] ?? porosity;
    if (left < 0.995 * porosity) told.push([`pores of ‘${name}’ filled`, formatPercent(1 - left / porosity)]);
  });
  return [...told, ['pump', pumpWords(moment, display)]].filter(([, figure]) => figure !== '') as [string, string][];
}

const pumpWords = ({ flows }: Moment, display: Display): string => {
  const main = flows['main'] ?? 0;
  return main > 1e-6 ? `lifts ${formatFlow(main, display)}` : 'stands';
};
