import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Media, Scenario } from '../../sim/scenario/scenario.ts';

/** The teaching site at work: its filter running. */
export interface Taught {
  readonly scenario: Scenario;
  readonly balance: BalanceAnswer;
  readonly media: Media;
}

/** What there is to teach of a site; undefined where its filter does not run. */
export function taughtOf(scenario: Scenario, balance: BalanceAnswer | null | undefined): Taught | undefined {
  const media = scenario.filter?.media;
  return media && balance && balance.channeled !== null ? { scenario, balance, media } : undefined;
}
