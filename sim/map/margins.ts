/** The checks of a running balance as signed margins, which a map can draw the border between 'holds' and 'fails' by. */
import type { Balance } from '../balance.ts';
import type { CheckInput } from '../results/checks/check.ts';
import { lastPoint } from '../results/checks/duty.ts';
import { stoneShares } from '../results/checks/falls.ts';
import { headrooms } from '../results/checks/headroom.ts';
import { MOST_CHANNELED } from '../results/checks/limits.ts';
import { openOutlets, shutOffHead } from '../results/checks/reach.ts';
import { FASTEST } from '../results/checks/velocity.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { BALANCE_CHECKS, type BalanceCheck } from './answer.ts';

export interface Margin {
  readonly check: BalanceCheck;
  /** Distance from the fail mark as a share of a length of its own, −; at least 0 where the check does not fail. */
  readonly margin: number;
}

/** A centimeter of headroom counts as much as a tenth of a limit: what is compared is only which margin is least, m. */
const ROOM = 0.1;
/** A stone that no water runs over is as far from the greatest share as can be. */
const DRY = -1;

/** The margin of every check that has something to ask, in order. */
export function marginsOf(s: Scenario, balance: Balance): Margin[] {
  const margins: Record<BalanceCheck, number | undefined> = {
    falls: fallsMargin({ scenario: s, balance }),
    channeling: channelingMargin(s, balance),
    headroom: least(headrooms(s, balance).map(({ room, marks }) => (room - marks.fail) / ROOM)),
    reach: least(openOutlets(s).map(({ needs }) => (shutOffHead(s) - needs) / Math.max(needs, ROOM))),
    velocity: velocityMargin(s, balance),
    duty: 1 - balance.answer.duty.flow / lastPoint(s.pump),
  };
  return BALANCE_CHECKS.flatMap((check) => {
    const margin = margins[check];
    return margin === undefined ? [] : [{ check, margin }];
  });
}

const least = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : Math.min(...values);

/** By how much the main stones' shares exceed the greatest beside them. */
function fallsMargin({ scenario, balance }: CheckInput): number | undefined {
  if (!balance) return undefined;
  const main = stoneShares(scenario, balance).filter(({ stone }) => stone.main);
  return least(main.map(({ share, rival }) => (share > 0 ? share - (rival?.share ?? 0) : DRY)));
}

/** Short of the limit of the channeled share and of the head that lifts the media, whichever is nearer. */
function channelingMargin({ limits }: Scenario, { answer }: Balance): number | undefined {
  const { channeled, lift } = answer;
  if (channeled === null || lift === null) return undefined;
  const limit = limits.channeling ?? MOST_CHANNELED;
  const share = limit > 0 ? 1 - channeled / limit : -channeled;
  return Math.min(share, 1 - lift);
}

function velocityMargin({ limits }: Scenario, { answer }: Balance): number {
  const fastest = Math.max(...Object.values(answer.duty.velocity).map(Math.abs));
  return 1 - fastest / (limits.velocity ?? FASTEST);
}
