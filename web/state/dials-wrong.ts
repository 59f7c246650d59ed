/** What is wrong with a figure as typed, in a builder's words. */
import { type DimensionName, type Display, parseQuantity } from '../../sim/quantity/index.ts';
import type { Problem } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { dimensionOf, isSensible, placeOf } from '../../sim/studies/setting.ts';
import { type Dial, wordsOf } from './dials-kinds.ts';
import { faultWords, quoted } from './fault-words.ts';
import { keyName } from './key-names.ts';
import { partAt } from './part-names.ts';

const EXAMPLES: Readonly<Partial<Record<DimensionName, Readonly<Record<Display, string>>>>> = {
  length: { metric: '−110 mm, 0.62 m or −4⅜ in', us: '−4 3/8 in, 3 ft 6 in or 7\'6"' },
  flow: { metric: '14 L/min', us: '4 gpm' },
  area: { metric: '6.6 m2', us: '70 ft2' },
  volume: { metric: '1.5 L', us: '0.4 gal' },
  fraction: { metric: '0.8 or 80 %', us: '0.8 or 80 %' },
};

/**
 * What is wrong about a dial: with its own figure, and, where it was turned last, with whatever it broke elsewhere.
 *
 * @param turned it was turned last
 */
export function wrongWords(
  dial: Dial,
  file: unknown,
  problems: readonly Problem[],
  display: Display,
  turned: boolean,
): string {
  if (dial.kind === 'choice') return turned ? brokenWords(file, problems, display) : '';
  const { setting } = dial;
  const dimension = dimensionOf(setting);
  const named = placeOf(file, setting);
  const own = ({ place }: Problem): boolean => place === named || place.startsWith(setting.place);
  const raw = named === undefined ? undefined : valueAt(file, named);
  const unread = typeof raw === 'string' ? unreadWords(raw, dimension, display) : '';
  if (unread !== '' && problems.some(own)) return unread;
  const sentences = problems.filter(own).map((problem) => `It must be ${wanted(problem, display)}.`);
  const others = problems.filter((problem) => !own(problem));
  return [...new Set([...sentences, turned ? brokenWords(file, others, display) : ''])].filter(Boolean).join(' ');
}

/** What a turn broke elsewhere. */
function brokenWords(file: unknown, problems: readonly Problem[], display: Display): string {
  const sentences = problems.map(
    (problem) => `With this, the ${partWords(file, problem.place)} would have to be ${wanted(problem, display)}.`,
  );
  return [...new Set(sentences)].join(' ');
}

function partWords(file: unknown, place: string): string {
  const part = partAt(file, place).name;
  const key = keyName(/([A-Za-z]\w*)[^A-Za-z]*$/.exec(place)?.[1] ?? '');
  return key === part ? part : `${part}’s ${key}`;
}

/** 'below the lowest point of the pond’s rim (−10 mm)': elevations in the display's units, no list of units. */
function wanted({ wanted: what }: Problem, display: Display): string {
  const [bounds = what] = what.split(': a number');
  const words = (z: string): string => wordsOf(Number(z), 'length', display);
  return bounds
    .replace(
      /from (-?[\d.]+) to (-?[\d.]+) m\b/,
      (_, low: string, high: string) => `from ${words(low)} to ${words(high)}`,
    )
    .replace(/\((-?[\d.]+) m\)/g, (_, z: string) => `(${words(z)})`);
}

/** '' where the text can be read. */
function unreadWords(text: string, dimension: DimensionName, display: Display): string {
  const parsed = parseQuantity(text, dimension);
  const example = `Type it like ${EXAMPLES[dimension]?.[display] ?? '1'}.`;
  const size = parsed.ok ? parsed.value : Number(text);
  if (Number.isFinite(size) && !isSensible(size)) return `${quoted(text)} is beyond any site. ${example}`;
  return parsed.ok ? '' : faultWords(text, parsed, dimension, example);
}
