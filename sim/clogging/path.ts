import { assemble } from '../network/assemble.ts';
import type { Clogging } from '../network/clogging.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import { pondInBalance, settingsOf } from '../network/start.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyVolumes } from '../steady.ts';

/** The running site at some deposit, by the water that has gone through the clean media until then, m³. */
export interface Clogged {
  readonly water: number;
  readonly held: readonly number[];
  /** Flows through and round the media, of the main, m³/s. */
  readonly media: number;
  readonly gap: number;
  readonly main: number;
  /** Head across the media over that at which they lift. */
  readonly lift: number;
}

/** Gap / bottom feed; 0 where nothing goes up. */
export function shareOf({ media, gap }: Clogged): number {
  return media + gap > 0 ? gap / (media + gap) : 0;
}

/**
 * The running balances that a site goes through while its media clog. What each layer holds follows from the water
 * that went through alone, so the whole way from clean to full is one line, and time comes from the flow along it.
 */
export class CloggingPath {
  readonly clogging: Clogging;
  private readonly scenario: Scenario;
  private readonly network: Network;
  private readonly settings: Settings;
  private nearby: Float64Array | undefined;

  private constructor(scenario: Scenario, network: Network, clogging: Clogging) {
    this.scenario = scenario;
    this.network = network;
    this.clogging = clogging;
    this.settings = settingsOf(scenario, network, scenario.pump.speed);
  }

  /** undefined where nothing can clog: neither debris nor a deposit, no media, no bottom feed. */
  static of(scenario: Scenario): CloggingPath | undefined {
    const network = assemble(scenario);
    const { clogging } = network.parts;
    return clogging && new CloggingPath(scenario, network, clogging);
  }

  /**
   * The running balance once so much water has gone through the clean media, m³.
   *
   * @throws RunFailure where there is none
   */
  at(water: number): Clogged {
    const { network, scenario, clogging, settings } = this;
    const none = clogging.layers.map(() => 0);
    const { held } = clogging.take(none, water);
    const laid: Settings = { ...settings, settled: { since: 0, held, perSecond: none } };
    const volumes = steadyVolumes(scenario, network, laid, pondInBalance(scenario), this.nearby);
    this.nearby = volumes;
    network.rates(0, volumes, new Float64Array(network.size), new Float64Array(network.quadratures));
    const { main, feeds } = network.parts.circuit;
    const { media, gap } = feeds.bottom;
    const up = { media: Math.max(0, media), gap: Math.max(0, gap) };
    return { water, held, ...up, main: main.flow, lift: network.mediaHead / feeds.liftHead };
  }
}
