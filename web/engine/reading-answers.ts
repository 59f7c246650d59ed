/** What the worker does for readings and for the setting of the valves. */
import { readScenario } from '../../sim/index.ts';
import { type Edit, readBack, setTo } from '../../sim/readings/index.ts';
import { parseJson } from '../../sim/scenario/json.ts';
import { expandSketch, holdsSketch } from '../../sim/sketch/expand.ts';
import { placeKeys, valueAt, withValueAt } from '../../sim/studies/place.ts';
import type { FileEdits, Given, ReadBackRequest, SetToRequest } from './protocol.ts';

/** Figures put into a file are written to so many digits: far finer than any ruler. */
const DIGITS = 6;

/**
 * Changes to an expanded file as changes to the file as it was typed: a list that only a sketch stands for is put in
 * whole, as the sketch with its own changes has it.
 */
export function editsInFile(raw: unknown, edits: readonly Edit[]): FileEdits {
  const written = edits.map(({ place, value }) => [place, figure(value)] as const);
  const sketched = written.filter(([place]) => /^sketch\b/.test(place));
  const changed = sketched.reduce<unknown>((file, [place, value]) => withValueAt(file, place, value), raw);
  const expanded = holdsSketch(changed) ? expandSketch(changed, { listed: false }).file : changed;
  const lists = new Map<string, unknown>();
  const single: [string, unknown][] = [];
  for (const [place, value] of written) {
    const list = listOf(place);
    if (list === undefined || valueAt(raw, list) !== undefined) single.push([place, value]);
    else lists.set(list, withValueAt(lists.get(list) ?? valueAt(expanded, list), place.slice(list.length), value));
  }
  return [...single, ...lists];
}

const figure = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : Number(value.toPrecision(DIGITS));

/** The outermost list a place lies in. */
function listOf(place: string): string | undefined {
  const keys = placeKeys(place);
  const first = keys.findIndex((key) => typeof key === 'number');
  return first < 0 ? undefined : keys.slice(0, first).join('.');
}

function fileOf(text: string): unknown {
  const json = parseJson(text);
  return json.ok ? json.value : undefined;
}

export function readBackGiven({ text, display, readings }: ReadBackRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const s = display ? { ...reading.scenario, display } : reading.scenario;
  const result = readBack(s, readings);
  if (!result.ok) return { kind: 'read back', result };
  const { scenario: _scenario, posterior: _posterior, edits, ...said } = result;
  return { kind: 'read back', result: { ...said, edits: editsInFile(fileOf(text), edits) } };
}

export function setToGiven({ text, display, wish }: SetToRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const s = display ? { ...reading.scenario, display } : reading.scenario;
  const result = setTo(s, wish);
  return { kind: 'set to', result, edits: result.ok ? editsInFile(fileOf(text), result.edits) : [] };
}
