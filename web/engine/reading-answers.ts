/** What the worker does for readings and for the setting of the valves. */
import { readScenario } from '../../sim/index.ts';
import { type Edit, readBack, setTo } from '../../sim/readings/index.ts';
import { isObject } from '../../sim/scenario/fields.ts';
import { parseJson } from '../../sim/scenario/json.ts';
import { expandSketch, holdsSketch } from '../../sim/sketch/expand.ts';
import { placeKeys, valueAt, withValueAt } from '../../sim/studies/place.ts';
import type { FileEdits, Given, ReadBackRequest, SetToRequest } from './protocol.ts';

/** Figures put into a file are written to so many digits: far finer than any ruler. */
const DIGITS = 6;

/** Changes to an expanded file as changes to the file as it was typed: a list that only a sketch stands for is put in whole. */
export function editsInFile(raw: unknown, edits: readonly Edit[]): FileEdits {
  const expanded = holdsSketch(raw) ? expandSketch(raw, { listed: false }).file : raw;
  const lists = new Map<string, unknown>();
  const single: [string, unknown][] = [];
  for (const { place, value } of edits) {
    const figure = value === undefined ? undefined : Number(value.toPrecision(DIGITS));
    const list = listOf(place);
    if (list === undefined || valueAt(raw, list) !== undefined) single.push([place, figure]);
    else {
      const inner = place.slice(list.length);
      const whole = lists.get(list) ?? valueAt(expanded, list);
      lists.set(list, isObject(whole) || Array.isArray(whole) ? withValueAt(whole, inner, figure) : whole);
    }
  }
  return [...single, ...lists];
}

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
