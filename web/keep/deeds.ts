/** What is done with kept sites at a press; fetched when it is wanted. */
import { demoSites } from '../sites.ts';
import { openDocument } from '../state/document.ts';
import { fileName, save } from '../views/save.ts';
import type { Keeper } from './keeper.ts';
import { linkOf } from './link.ts';
import { openedFile } from './opened.ts';
import { type Kept, titleOf } from './record.ts';
import { type Aside, bringBack, type Stock, take, takeStock } from './shelf.ts';

/** Everything this browser keeps of sites; nothing where it keeps nothing for us. */
export function stock(): Stock {
  try {
    return takeStock(localStorage);
  } catch {
    return { sites: [], newer: [], damaged: [], deleted: undefined };
  }
}

/** Opens a file as a site more, or the kept one that is the same. What is no site's file is told, and nothing opened. */
export async function openFile(keeper: Keeper, file: File): Promise<void> {
  let text: string;
  try {
    text = await file.text();
  } catch {
    return keeper.tell({ file: `‘${file.name}’ could not be read: it may have been moved or be in use.` });
  }
  const opened = openedFile(file.name, text);
  if (opened.kind === 'other') return keeper.tell({ file: opened.why });
  const doc = openDocument(file.name.replace(/\.json$/i, ''), opened.text);
  if (!doc) return;
  keeper.keep();
  const now = JSON.stringify(doc.now.file);
  const same = stock().sites.find(
    ({ doc: { name, now: kept } }) => name === doc.name && JSON.stringify(kept.file) === now,
  );
  if (same) keeper.choose({ kind: 'own', id: same.id });
  else keeper.add(doc);
}

/** A copy of the open site, without its steps. */
export function copySite(keeper: Keeper): void {
  const { doc } = keeper.session;
  if (!doc) return;
  const file = { ...(doc.now.file as object), title: `${titleOf(doc)}, a copy` };
  const copy = openDocument(doc.name, JSON.stringify(file));
  if (copy) keeper.add(copy);
}

/** The smallest site: three figures of a pond, and a pump; everything else is assumed, and listed as such. */
const SMALLEST = {
  title: 'My site',
  sketch: { length: '3.6 m', width: '2.4 m', depth: '0.7 m', pump: { flow: '200 L/min', head: '4 m' } },
};
const SMALLEST_US = {
  title: 'My site',
  display: 'us',
  sketch: { length: '12 ft', width: '8 ft', depth: '28 in', pump: { flow: '3200 gph', head: '13 ft' } },
};

export function newSite(keeper: Keeper): void {
  const { display, shown } = keeper.session;
  const isUs = (display ?? shown?.scenario.display) === 'us';
  const doc = openDocument('my-site', JSON.stringify(isUs ? SMALLEST_US : SMALLEST));
  if (doc) keeper.add(doc);
}

/** Gives the open site another name. */
export function rename({ session }: Keeper, words: string): void {
  const { doc } = session;
  const title = words.trim();
  if (!doc || title === '' || title === titleOf(doc)) return;
  session.edit({ ...(doc.now.file as object), title }, 'the site’s name');
  if (session.doc) session.doc = { ...session.doc, name: fileName(title) };
}

export function remove(keeper: Keeper, { id }: Kept): void {
  keeper.keep();
  const taken = take(localStorage, id);
  const isOpen = keeper.named.kind === 'own' && keeper.named.id === id;
  keeper.tell(taken ? {} : { put: 'full' });
  if (!taken || !isOpen) return;
  keeper.forget();
  keeper.choose({ kind: 'demo', name: demoSites[0].name });
}

export function restore(keeper: Keeper): void {
  const kept = bringBack(localStorage);
  if (kept) keeper.choose({ kind: 'own', id: kept.id });
  else keeper.tell({ put: 'full' });
}

/** What stands on the shelf and cannot be shown, as a file. */
export function saveAside({ key, text }: Aside): void {
  save(text, 'text/plain', `${fileName(key)}.txt`);
}

export function letGo(keeper: Keeper, { key }: Aside): void {
  localStorage.removeItem(key);
  keeper.tell({});
}

/** The case on the screen as a link: handed to the phone's own sharing, else put on the clipboard, and shown. */
export async function share(keeper: Keeper): Promise<void> {
  const { doc, about, display } = keeper.session;
  if (!doc) return;
  const hash = await linkOf({ file: doc.now.file, about, ...(display && { display }) });
  const link = new URL(hash, location.href).href;
  if (matchMedia('(pointer: coarse)').matches && 'share' in navigator) {
    const handed = await navigator.share({ title: titleOf(doc), url: link }).then(() => true, wasLeft);
    if (handed) return;
  }
  keeper.tell({ share: { link, copied: await copied(link) } });
}

/** Whether the phone's sharing was left by the person; else it failed, and the link is shown. */
const wasLeft = (why: unknown): boolean => why instanceof DOMException && why.name === 'AbortError';

export function copied(text: string): Promise<boolean> {
  return (
    navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    ) ?? Promise.resolve(false)
  );
}
