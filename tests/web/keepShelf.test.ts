import { describe, expect, test } from 'vitest';
import { type Kept, written } from '../../web/keep/record.ts';
import { bringBack, idIn, put, siteOn, take, takeStock, turn } from '../../web/keep/shelf.ts';
import { edited, openDocument } from '../../web/state/document.ts';
import { memoryStore } from './keepStore.ts';

function site(id: string, changed = 1, steps = 0): Kept {
  let doc = openDocument(id, `{"title":"Site ${id}"}`)!;
  for (let i = 0; i < steps; i++) doc = edited(doc, { title: `Site ${id}`, notes: 'n'.repeat(100), i }, 'the notes');
  return { id, doc, changed, stamp: `${id}-${changed}` };
}

const ids = (sites: readonly Kept[]): string[] => sites.map(({ id }) => id);

describe('the shelf', () => {
  test('gives the sites on it, the one last edited first, and nothing else the page keeps', () => {
    const store = memoryStore();
    store.setItem('tumblebay look', 'slate');
    for (const each of [site('a', 1), site('b', 3), site('c', 2)]) expect(put(store, each)).toBe('whole');
    expect(ids(takeStock(store).sites)).toEqual(['b', 'c', 'a']);
    expect(siteOn(store, 'c')?.changed).toBe(2);
    expect(siteOn(store, 'd')).toBeUndefined();
  });

  test('leaves what is damaged or of a later version where it is, beside the sound sites', () => {
    const store = memoryStore();
    put(store, site('a'));
    store.setItem('tumblebay site b', '{"version":1,');
    store.setItem('tumblebay site c', '{"version":9,"all":"new"}');
    store.setItem('tumblebay site d', written(site('a')));
    const before = new Map(store.held);
    const { sites, newer, damaged } = takeStock(store);
    expect(ids(sites)).toEqual(['a']);
    expect(newer).toEqual([{ key: 'tumblebay site c', text: '{"version":9,"all":"new"}' }]);
    expect(damaged.map(({ key }) => key)).toEqual(['tumblebay site b', 'tumblebay site d']);
    expect(store.held).toEqual(before);
  });

  test('brings the last deleted site back, with its steps', () => {
    const store = memoryStore();
    put(store, site('a', 1, 3));
    put(store, site('b', 2));
    take(store, 'b');
    take(store, 'a');
    expect(takeStock(store)).toMatchObject({ sites: [], deleted: { id: 'a' } });
    expect(bringBack(store)?.doc.past).toHaveLength(3);
    expect(ids(takeStock(store).sites)).toEqual(['a']);
    expect(bringBack(store)).toBeUndefined();
  });

  test('loses no site where there is no room to delete it into, or to bring it back to', () => {
    const store = memoryStore();
    const { setItem } = store;
    const refuse = (start: string): void => {
      store.setItem = (key, text) => {
        if (key.startsWith(start)) throw new DOMException('full', 'QuotaExceededError');
        setItem(key, text);
      };
    };
    put(store, site('a', 1, 1));
    refuse('tumblebay deleted');
    expect(take(store, 'a')).toBe(false);
    expect(ids(takeStock(store).sites)).toEqual(['a']);
    refuse('nothing');
    expect(take(store, 'a')).toBe(true);
    refuse('tumblebay site');
    expect(bringBack(store)).toBeUndefined();
    expect(takeStock(store).deleted?.id).toBe('a');
  });

  test('makes room first from what was deleted, then from the site’s own steps, and then says that it is full', () => {
    const store = memoryStore();
    put(store, site('a', 1, 8));
    take(store, 'a');
    const grown = site('b', 2, 8);
    store.most = written(grown).length + 100;
    expect(put(store, grown)).toBe('whole');
    expect(takeStock(store).deleted).toBeUndefined();

    store.most = 700;
    store.held.clear();
    expect(put(store, grown)).toBe('short');
    expect(siteOn(store, 'b')?.doc).toMatchObject({ now: { file: { i: 7 } }, past: [] });

    const stood = store.held.get('tumblebay site b');
    store.most = stood!.length + 'tumblebay site b'.length;
    expect(put(store, site('c', 3))).toBe('full');
    expect(store.held.get('tumblebay site b')).toBe(stood);
  });

  test('knows its own keys', () => {
    expect(idIn('tumblebay site xy')).toBe('xy');
    expect(idIn('tumblebay deleted')).toBeUndefined();
    expect(idIn(null)).toBeUndefined();
  });
});

describe('two tabs', () => {
  test('a tab writes over what it has seen, and over nothing else', () => {
    expect(turn(undefined, undefined)).toBe('write');
    expect(turn('s1', { stamp: 's1' })).toBe('write');
    expect(turn('s1', { stamp: 's2' })).toBe('part');
    expect(turn(undefined, { stamp: 's1' })).toBe('part');
  });

  test('a site deleted in the other tab is kept again by the one that edits it', () => {
    expect(turn('s1', undefined)).toBe('write');
  });
});
