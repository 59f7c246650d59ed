import { type Balance, balancesOf } from '../balance.ts';
import { withValves } from '../readings/valves.ts';
import { withSpeed } from '../results/checks/variants.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';

export interface Setting {
  readonly bottom: number;
  readonly top: number;
  readonly speed: number;
}

/** The site at a setting. */
export const siteAt = (s: Scenario, { bottom, top, speed }: Setting): Scenario =>
  withValves(withSpeed(s, speed), { bottom, top });

/** A flow below this counts as none, m³/s. */
const NO_FLOW = 1e-9;

/** A balance found, from which the next one is sought. */
export interface Found extends Setting {
  readonly balance: Balance;
}

/**
 * Running balances of one site at many settings: its network is assembled once, and each balance sought from one nearby.
 *
 * A basin that no water reaches keeps the level it has, so that a balance with other feeds running than the one it was
 * sought from is sought anew, from standing water, as for a site by itself.
 */
export class Seeker {
  balances = 0;
  anew = 0;
  private readonly site: Scenario;
  private readonly balance: ReturnType<typeof balancesOf>;

  constructor(site: Scenario) {
    this.site = site;
    this.balance = balancesOf(site);
  }

  /** The balance at a setting; undefined where the site finds none. Its network is the seeker's own, and moves on. */
  at(setting: Setting, nearby?: Found): Found | undefined {
    if (nearby) {
      const balance = this.find(setting, nearby.balance.volumes);
      if (balance && feedsOf(balance) === feedsOf(nearby.balance)) return { ...setting, balance };
    }
    this.anew++;
    const balance = this.find(setting);
    return balance && { ...setting, balance };
  }

  private find(setting: Setting, nearby?: Float64Array): Balance | undefined {
    this.balances++;
    try {
      return this.balance(siteAt(this.site, setting), nearby);
    } catch (error) {
      if (error instanceof RunFailure) return undefined;
      throw error;
    }
  }
}

/** Which ways the water takes. */
function feedsOf({ answer: { flows } }: Balance): string {
  return ['main', 'bottom feed', 'top feed'].map((name) => (Math.abs(flows[name] ?? 0) > NO_FLOW ? '1' : '0')).join('');
}
