import { balancesOf } from '../balance.ts';
import { lowestOf } from '../results/checks/variants.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { risingRoot } from './root.ts';

/** Openings of the two valves, 0..1; 0 where there is no such feed. */
export interface Openings {
  readonly bottom: number;
  readonly top: number;
}

/** What a setting of the valves does. */
export interface Does {
  /** Water over the filter's lip and over each stone by name, m. */
  readonly heads: Readonly<Record<string, number>>;
  readonly main: number;
  readonly bottom: number;
  readonly top: number;
}

/** Openings are found to this; a handle turns to some hundredths. */
const NARROW = 1e-6;
/** Least opening looked at: a ball valve all but shut, and a cock where it begins to pass. */
export const LEAST = { ball: 0.01, cock: 0.0834 };
/** Less than this counts as no flow in a share, m³/s. */
const NO_FLOW = 1e-9;

/** The site with its valves at openings. */
export function withValves(s: Scenario, { bottom, top }: Openings): Scenario {
  const { bottomFeed, topFeed } = s.plumbing;
  return {
    ...s,
    plumbing: {
      ...s.plumbing,
      bottomFeed: bottomFeed && { ...bottomFeed, valve: bottom },
      topFeed: topFeed && { ...topFeed, valve: top },
    },
  };
}

/** A site whose valves are turned: each setting's running balance, and the settings that bring about a wish. */
export class Valves {
  private readonly site: Scenario;
  private readonly balance: ReturnType<typeof balancesOf>;
  private readonly least: Openings;

  constructor(site: Scenario) {
    this.site = site;
    this.balance = balancesOf(site);
    const { bottomFeed, topFeed } = site.plumbing;
    this.least = { bottom: LEAST[bottomFeed?.law ?? 'ball'], top: LEAST[topFeed?.law ?? 'ball'] };
  }

  /** @throws RunFailure where the site finds no running balance */
  at(openings: Openings): Does {
    const { levels, flows, stones } = this.balance(withValves(this.site, openings)).answer;
    const { filter } = this.site;
    const heads = Object.entries(stones).map(([name, { head }]) => [name, head] as const);
    return {
      heads: {
        ...(filter ? { lip: Math.max(0, levels.filter - lowestOf(filter.lip.crest)) } : {}),
        ...Object.fromEntries(heads),
      },
      main: flows.main,
      bottom: flows['bottom feed'] ?? 0,
      top: flows['top feed'] ?? 0,
    };
  }

  /** Top valve by which a share goes up the bottom feed while its valve stands at an opening. */
  topFor(share: number, bottom: number): number {
    return risingRoot((top) => -this.beyond(share, { bottom, top }), this.least.top, 1, NARROW);
  }

  /** The most open setting with a share up the bottom feed: one of the valves is fully open in it. */
  widest(share: number): Openings {
    if (share >= 1) return { bottom: 1, top: 0 };
    if (share <= 0) return { bottom: 0, top: 1 };
    const bottom = risingRoot((x) => this.beyond(share, { bottom: x, top: 1 }), this.least.bottom, 1, NARROW);
    return { bottom, top: bottom < 1 ? 1 : this.topFor(share, 1) };
  }

  /** Logarithm of bottom over top feed, beyond that of the wished share: nearly straight in both openings. */
  private beyond(share: number, openings: Openings): number {
    const { bottom, top } = this.at(openings);
    return Math.log(Math.max(NO_FLOW, bottom) / Math.max(NO_FLOW, top)) - Math.log(share / (1 - share));
  }

  /** The setting with a share up the bottom feed whose water over a crest is nearest to a head, m. */
  settingFor(share: number, over: string, head: number): Openings {
    const { bottom, top } = this.widest(share);
    const excess = (openings: Openings): number => this.at(openings).heads[over] - head;
    if (share <= 0) return { bottom: 0, top: this.openTop(0, over, head) };
    const withTop = (x: number): Openings => ({ bottom: x, top: share >= 1 ? 0 : this.topFor(share, x) });
    if (excess({ bottom, top }) <= 0) return { bottom, top };
    return withTop(risingRoot((x) => excess(withTop(x)), this.least.bottom, bottom, NARROW));
  }

  /** Opening of the top valve by which a head stands over a crest, the bottom valve staying; the nearest where none does. */
  openTop(bottom: number, over: string, head: number): number {
    return risingRoot((top) => this.at({ bottom, top }).heads[over] - head, this.least.top, 1, NARROW);
  }

  /** The same of the bottom valve. */
  openBottom(top: number, over: string, head: number): number {
    return risingRoot((bottom) => this.at({ bottom, top }).heads[over] - head, this.least.bottom, 1, NARROW);
  }
}
