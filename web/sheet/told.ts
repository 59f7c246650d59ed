/** What a sheet rests on, and what whoever builds by it must mind. */
import type { Block, SheetFacts } from './block.ts';

const MOST = 5;
/** How a check names the assumed value that moves its figure most. */
const RESTS = /good to ± ([^,]+), most of it for (.+?), which is assumed/;

const CALLED: Readonly<Record<string, string>> = {
  'drain-back': 'the room left at a stop',
  'drain-back, valve failed': 'the same, the check valve failed',
  'first start': 'the vault at the first start',
  filling: 'the filling',
  loss: 'the loss a week',
  volume: 'the pond’s volume',
};

/** The assumed values that move the answers most, each by the figures that rest on it. */
export function assumedBlock({ answer }: SheetFacts): Block {
  const title = 'Assumed, not measured';
  if (!answer) return { title, says: ['The site has no answer yet, so what it rests on is not known.'] };
  const count = answer.assumed.length;
  if (count === 0) return { title, says: ['Nothing: every value is the file’s own.'] };
  const rests = new Map<string, string[]>();
  for (const { name, says } of answer.checks) {
    const found = RESTS.exec(says);
    if (found) rests.set(found[2], [...(rests.get(found[2]) ?? []), `${CALLED[name] ?? name} (± ${found[1]})`]);
  }
  const most = [...rests]
    .slice(0, MOST)
    .map(([what, figures]) => `Most moves ${what}: ${figures.slice(0, 3).join(', ')}.`);
  const all = `${count} ${count === 1 ? 'value is' : 'values are'} assumed in all; the page lists them with their bands.`;
  return { title, says: [...most, all] };
}

export const cautionsBlock: Block = {
  title: 'Cautions',
  says: [
    'Local codes and licensed practice come first; a simulation is no survey: measure again before you cut or pour.',
    'Water and electricity: ground-fault protection, a licensed electrician, power off before reaching into the vault.',
    'Children drown in little water: fence and depth by code, nobody leaves an open fill.',
    'Hose and autofill: an air gap or a backflow device, or pond water is sucked into the drinking water; licensed plumber.',
    'Overflow never goes onto a neighbor or a foundation; neither a check valve nor a float is flood protection.',
    'Before digging have buried lines marked; shore or slope trench walls. Stone: slings, machine, nobody under a load.',
    'Foam: air and a mask. Chlorinated water: treat by the true volume before fish.',
  ],
};
