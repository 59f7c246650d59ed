import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withValueAt } from '../../sim/studies/place.ts';
import {
  type Document,
  edited,
  isDirty,
  openDocument,
  redoLabel,
  redone,
  saved,
  textOf,
  undoLabel,
  undone,
} from '../../web/state/document.ts';

const open = (file: unknown): Document => openDocument('site', JSON.stringify(file))!;

const set = (doc: Document, place: string, value: unknown, gesture?: unknown): Document =>
  edited(doc, withValueAt(doc.now.file, place, value), `set ${place}`, gesture);

describe('a document', () => {
  test('keeps what was typed, with its units', () => {
    const file = { pond: { fillMark: '-4 3/8 in' }, span: '24 h' };
    expect(JSON.parse(textOf(open(file)))).toEqual(file);
  });

  test('of a text that is no JSON is none', () => {
    expect(openDocument('torn', '{ "title": "Torn",')).toBeUndefined();
  });

  test('of a text that loses something as an object is none: the reader tells what', () => {
    expect(openDocument('double', '{ "span": "1 h", "span": "2 h" }')).toBeUndefined();
    expect(openDocument('deep', `${'['.repeat(1e5)}${']'.repeat(1e5)}`)).toBeUndefined();
    expect(openDocument('marked', '\uFEFF{ "span": "1 h" }')?.now.file).toEqual({ span: '1 h' });
  });

  test('undoes and does again one step, and names both', () => {
    const first = open({ span: '1 h' });
    const second = set(first, 'span', '2 h');
    expect(undoLabel(first)).toBeUndefined();
    expect(undoLabel(second)).toBe('set span');
    const back = undone(second);
    expect(back.now.file).toEqual({ span: '1 h' });
    expect(redoLabel(back)).toBe('set span');
    expect(redone(back).now.file).toEqual({ span: '2 h' });
  });

  test('undoes the edits of one gesture together, and those of two one by one', () => {
    let doc = open({ mark: 0 });
    for (const value of [1, 2, 3]) doc = set(doc, 'mark', value, 'first drag');
    for (const value of [4, 5]) doc = set(doc, 'mark', value, 'second drag');
    expect(undone(doc).now.file).toEqual({ mark: 3 });
    expect(undone(undone(doc)).now.file).toEqual({ mark: 0 });
  });

  test('forgets what was undone once something else is done', () => {
    const doc = set(undone(set(open({ mark: 0 }), 'mark', 1)), 'mark', 2);
    expect(redoLabel(doc)).toBeUndefined();
    expect(redone(doc)).toBe(doc);
  });

  test('is dirty from an edit until it is saved or undone', () => {
    const doc = set(open({ mark: 0 }), 'mark', 1);
    expect([isDirty(doc), isDirty(undone(doc)), isDirty(saved(doc))]).toEqual([true, false, false]);
  });
});

const place = fc.constantFrom('a', 'b.c', 'list[0]', 'list[1].d', 'e["f g"]');
const edit = fc.record({
  place,
  value: fc.oneof(fc.integer(), fc.string()),
  gesture: fc.constantFrom(undefined, 'one', 'two'),
});

test('whatever was edited, undoing it all gives the file back, and doing it all again the last one', () => {
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 20 }), (edits) => {
      const file = { a: 1, b: { c: '2 mm' }, list: [3, { d: '4 in' }], e: { 'f g': true } };
      const first = open(file);
      const last = edits.reduce((doc, each) => set(doc, each.place, each.value, each.gesture), first);
      let back = last;
      while (undoLabel(back) !== undefined) back = undone(back);
      expect(back.now.file).toEqual(file);
      let again = back;
      while (redoLabel(again) !== undefined) again = redone(again);
      expect(again.now.file).toEqual(last.now.file);
      expect(first.now.file).toEqual(file);
    }),
  );
});
