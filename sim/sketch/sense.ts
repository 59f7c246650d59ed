/** What the numbers of a sketch must be to each other, said by the number to mend. */
import type { Tell } from '../scenario/fields.ts';
import type { Draft } from './draft.ts';
import { belowPool } from './falls.ts';
import { POOL, VAULT } from './layout.ts';
import { displayOf, shown } from './shown.ts';
import { GPH } from './units.ts';

/** Less than this is no waterfall. */
const LEAST_FLOW = 20 * GPH;
/** Sensible figures of a pump's box. */
const FLOWS = [100 * GPH, 60000 * GPH] as const;
const HEADS = [0.5, 60] as const;

export function tellSketch(site: Draft, tell: Tell): void {
  const display = displayOf(site.raw('length') ?? site.raw('pump'));
  const length = (x: number) => shown(x, 'length', display);
  tellPump(site, tell, display);
  const { area } = site.pond;
  if (area <= VAULT.area) {
    const found = `a pond of ${shown(area, 'area', display)}`;
    tell('sketch.length', found, `a pond larger than its vault, ${shown(VAULT.area, 'area', display)}`);
  }
  tellShelf(site, tell, length);
  const room = site.lip - belowPool(site);
  if (room >= POOL.leastFall - 1e-9 || site.beside['watercourse'] !== undefined) return;
  const short = POOL.leastFall - room;
  const stream = site.number('stream');
  const found = `${length(room)} between the filter’s lip and ${stream > 0 ? 'the top of the stream' : 'the pond’s edge'}`;
  const higher = `a lip at least ${length(site.lip - site.pond.mark + short)} above the water`;
  const shorter = stream - short / site.number('slope');
  const or = stream > 0 && shorter > 0 ? `, or a stream of at most ${length(shorter)}` : '';
  tell(stream > 0 ? 'sketch.stream' : 'sketch.lip', found, `${length(POOL.leastFall)} for the stone: ${higher}${or}`);
}

function tellPump(site: Draft, tell: Tell, display: 'us' | 'metric'): void {
  const { curve, lift } = site;
  const box = 'flow' in curve;
  const head = box ? curve.head : (curve[0]?.[1] ?? 0);
  const flow = (x: number) => shown(x, 'flow', display);
  const length = (x: number) => shown(x, 'length', display);
  const inRange = (x: number, [least, most]: readonly [number, number]) => x >= least && x <= most;
  if (!inRange(site.boxFlow, FLOWS)) {
    const nearest = flow(site.boxFlow < FLOWS[0] ? FLOWS[0] : FLOWS[1]);
    const wanted = `a pump’s most flow from ${flow(FLOWS[0])} to ${flow(FLOWS[1])}; the nearest that makes sense is ${nearest}`;
    tell(box ? 'sketch.pump.flow' : 'sketch.pump', flow(site.boxFlow), wanted);
    return;
  }
  const height = lift - site.pond.mark;
  if (!inRange(head, HEADS)) {
    const nearest = length(head < HEADS[0] ? HEADS[0] : HEADS[1]);
    const wanted = `a pump’s most head from ${length(HEADS[0])} to ${length(HEADS[1])}; the nearest that makes sense is ${nearest}`;
    tell(box ? 'sketch.pump.head' : 'sketch.pump', length(head), wanted);
  } else if (head <= height) {
    const wanted = `more than the ${length(height)} the water is lifted to above the pond; lower the filter’s lip, or take a pump of more head`;
    tell(box ? 'sketch.pump.head' : 'sketch.pump', `a head of ${length(head)}`, wanted);
  } else if (site.designFlow < LEAST_FLOW) {
    const wanted = `at least ${flow(LEAST_FLOW)} over the stones; a pump of more head or flow, a lower lip, or a wider pipe`;
    tell('sketch.pump', `${flow(site.designFlow)} that come up`, wanted);
  }
}

function tellShelf(site: Draft, tell: Tell, length: (x: number) => string): void {
  if (!site.isTyped('shelf')) return;
  const shelves = site.value('shelf') as readonly { depth: number; width: number }[];
  const depth = site.number('depth');
  const narrower = Math.min(site.number('length'), site.number('width'));
  const wide = shelves.reduce((sum, shelf) => sum + 2 * shelf.width, 0);
  if (wide >= narrower)
    tell(
      'sketch.shelf',
      `shelves ${length(wide)} wide in all`,
      `less than the pond’s ${length(narrower)}, so that a floor is left`,
    );
  const deepest = Math.max(0, ...shelves.map((shelf) => shelf.depth));
  if (deepest >= depth)
    tell('sketch.shelf', `a shelf ${length(deepest)} down`, `less than the pond’s depth of ${length(depth)}`);
}
