import { type Balance, crestWidth } from '../../balance.ts';
import { type Display, formatFlow, formatLength, formatNumber, formatPercent } from '../../quantity/index.ts';
import type { Pool, Scenario, Stone } from '../../scenario/scenario.ts';
import type { Check, Verdict } from '../answer.ts';
import { type CheckInput, judged, told, waysSentence } from './check.ts';
import { balanceOf, leastSteps, raise, rulerStep, withStone } from './variants.ts';

/** How far a stone is moved at the most to mend a share, m. */
const MOST_MOVED = 0.1;
/** 100 US gallons an hour per inch of width, m²/s: common practice, no source. */
const RULE = 3.785411784 / 3600 / 0.0254 / 10;

export interface StoneShare {
  readonly pool: Pool;
  readonly stone: Stone;
  readonly share: number;
  /** Stone beside it that takes the most, and its share. */
  readonly rival: { readonly name: string; readonly share: number } | undefined;
  readonly verdict: Verdict;
}

/** Whether the main stones take the greatest share of their pools, and what sheet every stone carries. */
export function fallsCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const places = stoneShares(scenario, balance);
  const first =
    places.find((p) => p.verdict === 'fail') ?? places.find((p) => p.stone.main) ?? places.find((p) => p.share > 0.5);
  const lead = first ?? places[0];
  if (!lead) return undefined;
  const { display } = scenario;
  const parts = {
    name: 'falls',
    value: lead.share,
    unit: '',
    says: stoneSays(lead, balance, display) + (lead.share > 0 ? ` ${ruleSays(display)}` : ''),
    places: places
      .filter((p) => p !== lead)
      .map((p) => ({
        name: p.stone.name,
        verdict: p.verdict,
        value: p.share,
        says: stoneSays(p, balance, display),
      })),
  };
  if (!lead.stone.main) return told(parts);
  const limit = lead.rival?.share ?? 0;
  return judged({
    ...parts,
    verdict: lead.verdict,
    limit,
    margin: lead.share - limit,
    origin: 'common practice',
    mend: lead.verdict === 'fail' ? mendFor(scenario, lead) : '',
  });
}

/** What each stone takes of its pool’s water in a balance. */
export function stoneShares(s: Scenario, balance: Balance): StoneShare[] {
  const { stones } = balance.answer;
  return s.watercourse.flatMap((pool) => {
    if (pool.kind !== 'pool') return [];
    const shares = pool.stones.map((stone) => ({ stone, name: stone.name, share: stones[stone.name].share }));
    return shares.map(({ stone, share }): StoneShare => {
      const others = shares.filter((o) => o.stone !== stone && !(stone.main && o.stone.main));
      const rival = others.sort((a, b) => b.share - a.share)[0];
      const holds = share > 0 && share >= (rival?.share ?? 0);
      return { pool, stone, share, rival, verdict: stone.main ? (holds ? 'pass' : 'fail') : 'told' };
    });
  });
}

/** Flow over a width as the trade counts it. */
function perWidth(q: number, display: Display): string {
  return display === 'us'
    ? `${formatNumber((q / RULE) * 100)} gph per inch`
    : `${formatNumber(q * 60000)} L/min per meter`;
}

function stoneSays({ stone, share, pool }: StoneShare, { answer }: Balance, display: Display): string {
  const { head, criticalDepth, reach } = answer.stones[stone.name];
  if (share <= 0) return `No water runs over ‘${stone.name}’.`;
  const flow = answer.flows[stone.name];
  const takes = pool.stones.length > 1 ? `takes ${formatPercent(share)} of its pool’s water` : 'takes all the water';
  const open = crestWidth(stone.crest) * (1 - stone.blockage);
  const lands = stone.fall > 0 ? `, landing ${formatLength(reach, display)} out` : '';
  return (
    `‘${stone.name}’ ${takes}, ${formatFlow(flow, display)}: ${formatLength(head, display)} of water over its ` +
    `lowest point, ${perWidth(flow / open, display)}, a sheet ${formatLength(criticalDepth, display)} thick${lands}.`
  );
}

function ruleSays(display: Display): string {
  const rule = display === 'us' ? '100 gph per inch' : '250 L/min per meter (100 US gal/h per inch)';
  const [sheet, low, high] = display === 'us' ? ['1/2 in', '5/8', '3/4 in'] : ['12 mm', '17', '20 mm'];
  return (
    `Common practice: ${rule} of width gives a sheet of about ${sheet}, which is not what a ruler ` +
    `shows behind the stone (${low} to ${high}); it takes the stone as level over its whole width.`
  );
}

/** Sealing beneath a pool's stones, where all its water seeps away there. */
function sealing(s: Scenario, { stone, pool }: StoneShare): string {
  const sealed = pool.stones.reduce(
    (site, { name }) => withStone(site, name, (x) => ({ ...x, seep: { ...x.seep, k: 0 } })),
    s,
  );
  const share = balanceOf(sealed)?.answer.stones[stone.name].share ?? 0;
  return share > 0 ? waysSentence([`seal what seeps beneath the stones of ‘${pool.name}’`]) : '';
}

/** Clearing the main stone, raising its rival or lowering the stone itself: what does it by the balance. */
function mendFor(s: Scenario, place: StoneShare): string {
  const { stone, rival } = place;
  if (!rival || rival.share <= 0) return sealing(s, place);
  const takesMost = (changed: Scenario): boolean => {
    const stones = balanceOf(changed)?.answer.stones;
    return stones !== undefined && stones[stone.name].share > 0 && stones[stone.name].share >= stones[rival.name].share;
  };
  const ways: string[] = [];
  if (stone.blockage > 0 && takesMost(withStone(s, stone.name, (x) => ({ ...x, blockage: 0 }))))
    ways.push(`clear the leaves off ‘${stone.name}’`);
  const step = rulerStep(s.display);
  const most = Math.round(MOST_MOVED / step);
  const up = leastSteps((n) => takesMost(withStone(s, rival.name, (x) => raise(x, n * step))), most);
  if (up !== undefined) ways.push(`raise ‘${rival.name}’ by ${formatLength(up * step, s.display)}`);
  const down = leastSteps((n) => takesMost(withStone(s, stone.name, (x) => raise(x, -n * step))), most);
  if (down !== undefined) ways.push(`lower ‘${stone.name}’ by ${formatLength(down * step, s.display)}`);
  return waysSentence(ways);
}
