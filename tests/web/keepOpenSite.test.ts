import { describe, expect, test } from 'vitest';
import { OpenSite } from '../../web/keep/open-site.ts';
import { siteOn, take, takeStock } from '../../web/keep/shelf.ts';
import { type Document, edited, openDocument, undone } from '../../web/state/document.ts';
import { memoryStore } from './keepStore.ts';

const demo = openDocument('courtyard', '{"title":"Courtyard"}')!;
const edit = (doc: Document, notes: string): Document => edited(doc, { title: 'Courtyard', notes }, 'the notes');

/** Two tabs that show the same kept site. */
function twoTabs() {
  const store = memoryStore();
  const one = new OpenSite(() => store);
  one.opened(demo);
  const doc = edit(demo, 'first');
  expect(one.write(doc)).toBe('whole');
  const id = one.id!;
  const other = new OpenSite(() => store);
  const kept = siteOn(store, id)!;
  other.opened(kept.doc, kept);
  return { store, one, other, doc, id, standing: kept.doc };
}

const notesOf = (doc: Document | undefined): unknown => (doc?.now.file as { notes?: unknown })?.notes;

describe('the open site', () => {
  test('a demo is not kept until it is edited, and then as a copy of its own', () => {
    const store = memoryStore();
    const tab = new OpenSite(() => store);
    tab.opened(demo);
    expect(tab.isAhead(demo)).toBe(false);
    const doc = edit(demo, 'mine');
    expect(tab.isAhead(doc)).toBe(true);
    expect(tab.write(doc)).toBe('whole');
    expect(tab.isAhead(doc)).toBe(false);
    expect(takeStock(store).sites.map(({ id }) => id)).toEqual([tab.id]);
    expect(tab.isAhead(undone(doc))).toBe(true);
  });

  test('is told as not kept where the browser keeps nothing for us', () => {
    const tab = new OpenSite(() => {
      throw new DOMException('denied', 'SecurityError');
    });
    tab.opened(demo);
    expect(tab.write(edit(demo, 'mine'))).toBe('full');
  });
});

describe('two tabs with the same site', () => {
  test('the second to write does not write over the first', () => {
    const { store, one, other, doc, id, standing } = twoTabs();
    expect(one.write(edit(doc, 'of one'))).toBe('whole');
    const others = edit(standing, 'of the other');
    expect(other.write(others)).toBe('part');
    expect(notesOf(siteOn(store, id)?.doc)).toBe('of one');
    other.apart();
    expect(other.write(others)).toBe('whole');
    expect(
      takeStock(store)
        .sites.map((kept) => notesOf(kept.doc))
        .sort(),
    ).toEqual(['of one', 'of the other']);
  });

  test('one that did nothing hears that the site goes on elsewhere', () => {
    const { one, other, doc } = twoTabs();
    expect(other.heard()).toBeUndefined();
    one.write(edit(doc, 'of one'));
    expect(other.heard()).toBe('elsewhere');
    expect(one.heard()).toBeUndefined();
  });

  test('one whose writing another built on hears that the site goes on elsewhere', () => {
    const { store, one, other, doc, id } = twoTabs();
    one.write(edit(doc, 'of one'));
    const kept = siteOn(store, id)!;
    other.opened(kept.doc, kept);
    expect(other.write(edit(kept.doc, 'on top'))).toBe('whole');
    expect(one.heard()).toBe('elsewhere');
  });

  test('one whose writing was written over unseen, as when both write at once, has to keep it apart', () => {
    const { store, one, other, doc, id, standing } = twoTabs();
    const before = store.held.get(`tumblebay site ${id}`)!;
    one.write(edit(doc, 'of one'));
    store.held.set(`tumblebay site ${id}`, before);
    expect(other.write(edit(standing, 'of the other'))).toBe('whole');
    expect(one.heard()).toBe('part');
  });

  test('a site deleted in one is told in the other, which keeps it again only when asked or edited', () => {
    const { store, other, id, standing } = twoTabs();
    take(store, id);
    expect(other.heard()).toBe('deleted');
    expect(other.isAhead(standing)).toBe(false);
    other.anew();
    expect(other.isAhead(standing)).toBe(true);
    expect(other.write(standing)).toBe('whole');
    expect(siteOn(store, id)).toBeDefined();
  });
});
