import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Kept, read, titleOf, written } from '../../web/keep/record.ts';
import { type Document, edited, openDocument, redone, saved, undone } from '../../web/state/document.ts';

const opened = openDocument('pond', '{ "title": "A pond", "step": 0 }')!;

/** Each letter one thing done to a document. */
function done(deeds: readonly string[], from = opened): Document {
  return deeds.reduce((doc, deed, step) => {
    if (deed === 'e') return edited(doc, { title: 'A pond', step: step + 1 }, `step ${step + 1}`);
    if (deed === 'u') return undone(doc);
    return deed === 'r' ? redone(doc) : saved(doc);
  }, from);
}

const keptOf = (doc: Document): Kept => ({ id: 'abc', doc, changed: 17, stamp: 's2', before: 's1' });

/** A document without the gestures, which are of the hand that made them. */
function plain(doc: Document): unknown {
  const all = [...doc.past, doc.now, ...doc.future].map(({ file, label }) => ({ file, label }));
  const savedAt = [...doc.past, doc.now, ...doc.future].findIndex(({ file }) => file === doc.kept);
  return { name: doc.name, all, at: doc.past.length, savedAt };
}

function keptIn(text: string): Kept {
  const reading = read(text);
  if (reading.kind !== 'kept') throw new Error(reading.kind);
  return reading.kept;
}

const deeds = fc.array(fc.constantFrom('e', 'u', 'r', 's'), { maxLength: 40 });

describe('a kept site', () => {
  test('comes back with every step, the step it stands at and the one that was saved', () => {
    fc.assert(
      fc.property(deeds, (each) => {
        const kept = keptOf(done(each));
        const back = keptIn(written(kept));
        expect(plain(back.doc)).toEqual(plain(kept.doc));
        expect({ ...back, doc: undefined }).toEqual({ ...kept, doc: undefined });
      }),
    );
  });

  test('keeps of its steps the nearest that fit, first back, then forward, and always the file as it stands', () => {
    fc.assert(
      fc.property(deeds, fc.nat(2000), (each, most) => {
        const doc = done(each);
        const { past, now, future } = keptIn(written(keptOf(doc), most)).doc;
        expect(now.file).toEqual(doc.now.file);
        expect(past.map(({ file }) => file)).toEqual(
          doc.past.slice(doc.past.length - past.length).map(({ file }) => file),
        );
        expect(future.map(({ file }) => file)).toEqual(doc.future.slice(0, future.length).map(({ file }) => file));
        if (past.length < doc.past.length) expect(future).toEqual([]);
      }),
    );
  });

  test('whose steps take no more than was allowed is shorter than them and one file', () => {
    const doc = done(Array.from({ length: 500 }, () => 'e'));
    const text = written(keptOf(doc), 5000);
    expect(text.length).toBeLessThan(5500);
    expect(keptIn(text).doc.past.length).toBeGreaterThan(50);
  });

  test('of which the saved step no longer fits has edits that are not saved', () => {
    const doc = done(['e', 'e', 'e']);
    expect(keptIn(written(keptOf(doc), 0)).doc.kept).toBeUndefined();
  });

  test('is mended where only steps cannot be read: the file stands, and the loss is told', () => {
    const doc = done(['e', 'e', 'e', 'e', 'u']);
    const text = written(keptOf(doc));
    const value = JSON.parse(text);
    value.editions[1] = 'rubbish';
    const reading = read(JSON.stringify(value));
    if (reading.kind !== 'kept') throw new Error(reading.kind);
    expect(reading.lostSteps).toBe(true);
    expect(reading.kept.doc.now.file).toEqual(doc.now.file);
    expect(reading.kept.doc.past.map(({ file }) => (file as { step: number }).step)).toEqual([2]);
    expect(reading.kept.doc.future).toHaveLength(1);
  });

  const whole = written(keptOf(done(['e', 'e'])));
  test.each([
    ['torn', whole.slice(0, -9)],
    ['empty', ''],
    ['null', 'null'],
    ['a list', '[]'],
    ['without its file', whole.replace(/"editions":.*\]\}/, '"editions":[]}')],
    ['with a file that is a figure', whole.replace(/\["step 2",.*?\}\]/, '["step 2",7]')],
    ['that stands at no step', whole.replace('"at":2', '"at":9')],
    ['of a version that never was', whole.replace('"version":1', '"version":0')],
    ['without a name to keep it by', whole.replace('"id":"abc"', '"id":""')],
  ])('that is %s is told as damaged', (_, text) => {
    expect(text).not.toBe(whole);
    expect(read(text)).toEqual({ kind: 'damaged' });
  });

  test('of a later version is told as newer, whatever else it holds', () => {
    expect(read('{"version":2}')).toEqual({ kind: 'newer' });
    expect(read(whole.replace('"version":1', '"version":3'))).toEqual({ kind: 'newer' });
  });

  test('never makes reading throw, whatever stands there', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(['newer', 'damaged']).toContain(read(text).kind);
      }),
    );
  });

  test('is called by its file’s title, else by the file', () => {
    expect(titleOf(opened)).toBe('A pond');
    expect(titleOf(openDocument('mine', '{"title": 7}')!)).toBe('mine');
    expect(titleOf(openDocument('mine', 'null')!)).toBe('mine');
  });
});
