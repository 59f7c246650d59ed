import { formatFlow, formatPercent } from '../../quantity/index.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

/** What of the main line's water goes up through the filter; nothing to ask where there is only one way. */
export function splitCheck({ scenario, balance }: CheckInput): Check | undefined {
  const { bottomFeed, topFeed } = scenario.plumbing;
  if (!balance || !scenario.filter || !bottomFeed || !topFeed) return undefined;
  const { split, flows } = balance.answer;
  const { display } = scenario;
  const says =
    split === null
      ? 'No water comes up the main line, so there is nothing to split.'
      : `${formatPercent(split)} of the main line’s ${formatFlow(flows.main, display)} goes up through the filter ` +
        `(${formatFlow(flows['bottom feed'], display, flows.main)}), ${formatFlow(flows['top feed'], display, flows.main)} by the top feed.`;
  const rule =
    'Common practice: about half, where the pump is larger than the filter wants. The half protects the filter only ' +
    'where its media are fine or clogged; clean coarse media carry all of it.';
  return told({ name: 'split', value: split, unit: '', says: `${says} ${rule}` });
}
