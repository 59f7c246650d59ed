import { html, nothing, type TemplateResult } from 'lit';
import { demoSites } from '../sites.ts';
import { isDirty, textOf } from '../state/document.ts';
import { fileName, save } from '../views/save.ts';
import { typing } from '../views/typing.ts';
import { copySite, newSite, openFile, remove, rename, restore, stock } from './deeds.ts';
import type { Keeper } from './keeper.ts';
import { type Kept, titleOf } from './record.ts';

/** What stands behind the site's name: the sites of this browser, the demos, and the open site's name and file. */
export function sheetView(keeper: Keeper): TemplateResult {
  return html`${ownView(keeper)} ${demosView(keeper)} ${siteView(keeper)}`;
}

/** Runs a deed and closes the sheet, whose summary has the focus then. */
function andClose(deed: () => void): (event: Event) => void {
  return (event) => {
    const details = (event.currentTarget as Element).closest('details');
    deed();
    details?.removeAttribute('open');
    details?.querySelector('summary')?.focus();
  };
}

const day = new Intl.DateTimeFormat('en', {
  month: 'short',
  day: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
  hour12: false,
});

function ownView(keeper: Keeper): TemplateResult | typeof nothing {
  const { sites, deleted } = stock();
  if (sites.length === 0 && !deleted) return nothing;
  const { named } = keeper;
  const each = (kept: Kept): TemplateResult => {
    const { id, doc, changed } = kept;
    const title = titleOf(doc);
    return html`<div class="own">
      <button aria-pressed=${named.kind === 'own' && named.id === id}
        @click=${andClose(() => keeper.choose({ kind: 'own', id }))}>${title}</button>
      <span class="note">${day.format(changed)}</span>
      <button aria-label=${`delete ${title}`} @click=${() => remove(keeper, kept)}>delete</button>
    </div>`;
  };
  return html`<div role="group" aria-label="Your own">
    <p class="note">Your own, kept in this browser</p>
    ${sites.map(each)}
    ${
      deleted
        ? html`<p role="status">‘${titleOf(deleted.doc)}’ was deleted.
            <button @click=${andClose(() => restore(keeper))}>bring it back</button></p>`
        : nothing
    }
  </div>`;
}

const demosView = (keeper: Keeper): TemplateResult => html`<div role="group" aria-label="Sites">
  <p class="note">Sites to look at</p>
  ${demoSites.map(
    ({
      name,
      title,
    }) => html`<button class="line" aria-pressed=${keeper.session.name === name && keeper.named.kind !== 'own'}
      @click=${andClose(() => keeper.choose({ kind: 'demo', name }))}>${title}</button>`,
  )}
</div>`;

function siteView(keeper: Keeper): TemplateResult {
  const { doc } = keeper.session;
  const open = (event: Event): void => {
    const field = event.target as HTMLInputElement;
    const file = field.files?.[0];
    field.value = '';
    if (file) void openFile(keeper, file);
  };
  const save = (): void => saveSite(keeper);
  return html`<div role="group" aria-label="File">
    <p class="note">${doc && isDirty(doc) ? 'This site has edits that are in no file' : 'This site'}</p>
    ${
      doc
        ? html`<label class="name">its name<input type="text" autocomplete="off" .value=${typing(titleOf(doc))}
            @change=${(event: Event) => rename(keeper, (event.target as HTMLInputElement).value)} /></label>`
        : nothing
    }
    <button ?disabled=${!doc} @click=${save}>save the file</button>
    <button ?disabled=${!doc} @click=${andClose(() => copySite(keeper))}>make a copy</button>
    <label class="file">open a file<input type="file" accept=".json,application/json" @change=${open} /></label>
    <button @click=${andClose(() => newSite(keeper))}>begin a new site</button>
  </div>`;
}

/** Hands the site's file to the browser. */
export function saveSite({ session }: Keeper): void {
  const { doc } = session;
  if (!doc) return;
  save(textOf(doc), 'application/json', `${doc.name || fileName(titleOf(doc))}.json`);
  session.save();
}
