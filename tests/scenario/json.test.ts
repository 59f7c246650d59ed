import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJson } from '../../sim/scenario/json.ts';

const fault = (text: string): string => {
  const reading = parseJson(text);
  return reading.ok ? 'none' : `${reading.line}:${reading.column} ${reading.found} | ${reading.wanted}`;
};

/** What the engine's own parser makes of a text: RFC 8259 as implemented by others. */
const engine = (text: string): { ok: boolean; value?: unknown } => {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false };
  }
};

describe('the JSON reader', () => {
  test.each([
    ['{\n  "span": 48 h\n}', '2:14 h | a comma or }'],
    ['{\n  "span": 1,\n}', '3:1 } after a comma | a key in double quotes, or no comma before }'],
    ['{ "a": 1 "b": 2 }', '1:10 " | a comma or }'],
    ['{ "a" 1 }', '1:7 1 | a colon after the key "a"'],
    ["{ 'a': 1 }", "1:3 'a' | a key in double quotes"],
    ['{ "a": 1, // why\n }', '1:11 a comment | a key in double quotes'],
    ['{ "a": .5 }', '1:8 .5 | a value: a number, a text in double quotes, true, false, [ or {'],
    ['{ "a": 01 }', '1:8 01 | a value: a number, a text in double quotes, true, false, [ or {'],
    ['{ "a": NaN }', '1:8 NaN | a value: a number, a text in double quotes, true, false, [ or {'],
    ['{ "a": "x\n" }', '1:8 a text without its closing quote | a double quote at its end, on the same line'],
    ['{ "a": "\\q" }', '1:10 \\q | one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u'],
    ['{ "a": [1, 2 }', '1:14 } | a comma or ]'],
    ['{ "a": 1 } 2', '1:12 2 | the end of the file: one value only'],
    ['{ "a": 1', '1:9 the end of the file | a comma or }'],
    ['', '1:1 nothing | a site in braces { … }'],
    ['\r\n{ "a": 1, "a": 2 }', '2:11 the key "a" a second time | each key once'],
  ])('of %j says %j', (text, said) => {
    expect(fault(text)).toBe(said);
  });

  test('reads what the engine’s parser reads, to the same value', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const reading = parseJson(text);
        expect(reading.ok && JSON.stringify(reading.value)).toBe(JSON.stringify(engine(text).value));
      }),
    );
  });

  test('refuses what the engine’s parser refuses, and nothing else but a key twice', () => {
    const marks = fc.constantFrom(...'{}[]:,"\\ \n01.-+eEtruefalsn/u', 'true', 'null', '"a"', '1', '{"a":');
    fc.assert(
      fc.property(fc.array(marks, { maxLength: 12 }), (parts) => {
        const text = parts.join('');
        const reading = parseJson(text);
        if (!reading.ok && reading.wanted === 'each key once') return;
        expect(reading.ok).toBe(engine(text).ok);
      }),
      { numRuns: 5000 },
    );
  });

  test('stops at brackets without end instead of at the end of the stack', () => {
    expect(fault('['.repeat(100000))).toBe('1:66 brackets within brackets | at most 64 levels of them');
  });

  test('passes over a byte order mark and keeps "__proto__" a key like any other', () => {
    const reading = parseJson('\uFEFF{ "__proto__": { "a": 1 } }');
    expect(reading.ok && Object.keys(reading.value as object)).toEqual(['__proto__']);
    expect(({} as { a?: number }).a).toBeUndefined();
    expect(fault('\uFEFFx')).toMatch(/^1:1 /);
  });
});
