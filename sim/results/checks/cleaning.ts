import { care } from '../../clogging/care.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

/** How often the media are to be cleaned; left out where the file gives no debris. */
export function cleaningCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance || scenario.debris === 0 || !scenario.filter?.media) return undefined;
  const answer = care(scenario);
  if (!answer.care) return told({ name: 'cleaning', value: null, unit: 's', says: answer.says });
  const { passing, says } = answer;
  const value = passing.when === 'later' ? passing.t : null;
  const origin = scenario.limits.channeling === undefined ? 'our default' : 'file';
  return told({ name: 'cleaning', value, unit: 's', origin, says });
}
