import { parseQuantity } from '../quantity/index.ts';
import type { LogLine } from './reading.ts';

/** What stands in a line after its level. */
export type Note = Pick<LogLine, 'pump' | 'added' | 'rain'>;

export const NOTE_WANTED = 'on or off for the pump, ‘added 40 L’, ‘rain 5 mm’, or words without figures';

const PUMP: Readonly<Record<string, 'on' | 'off'>> = {
  on: 'on',
  running: 'on',
  runs: 'on',
  '1': 'on',
  off: 'off',
  stopped: 'off',
  standing: 'off',
  '0': 'off',
};
const ADDED = /^(?:added|filled(?: up)?|topped up)\b[\s:]*(?:with\s+)?(.*)$/i;
const RAIN = /^rain(?:ed|fall)?\b[\s:]*(.*)$/i;

/** A field after the level; undefined where it says nothing that can be taken; what is wrong with one that should. */
export function noteIn(field: string): Note | { readonly found: string } | undefined {
  const plain = field.trim();
  const word = plain.toLowerCase().replace(/^pump\s+/, '');
  if (Object.hasOwn(PUMP, word)) return { pump: PUMP[word] };
  const added = ADDED.exec(plain);
  if (added) return amountIn(added[1], 'volume', (value) => ({ added: value }));
  const rain = RAIN.exec(plain);
  if (rain) return amountIn(rain[1], 'length', (value) => ({ rain: value }));
  return /\d/.test(plain) ? { found: JSON.stringify(plain) } : undefined;
}

function amountIn(
  text: string,
  dimension: 'volume' | 'length',
  note: (value: number | 'unknown') => Note,
): Note | { readonly found: string } {
  // Words without a figure tell that water came, not how much.
  if (!/\d/.test(text)) return note('unknown');
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) return { found: parsed.found };
  return parsed.value >= 0 ? note(parsed.value) : { found: `${JSON.stringify(text)}, less than nothing` };
}
