import { html, nothing, type TemplateResult } from 'lit';
import { copied, letGo, saveAside, stock } from './deeds.ts';
import type { Keeper } from './keeper.ts';
import type { News } from './news.ts';
import { saveSite } from './sheet.ts';
import type { Aside } from './shelf.ts';

type Words = TemplateResult | typeof nothing;
/** A sentence, and on a line of their own, where they don't fit beside it, the presses that answer it. */
const told = (words: string, ...presses: TemplateResult[]): TemplateResult =>
  html`<p class="caution" role="status">${words}<span>${presses}</span></p>`;
const press = (words: string, deed: () => void): TemplateResult => html`<button @click=${deed}>${words}</button>`;

/** What has to be told of the keeping of sites, in sentences, each with what can be done about it. */
export function newsView(keeper: Keeper): TemplateResult {
  const { news, memory } = keeper;
  const done = (each: keyof News) => press('good', () => keeper.tell({ [each]: undefined }));
  return html`${shareView(keeper)} ${news.version ? told('A new version of this page is here. Your sites are saved first.', press('use the new version', news.version)) : nothing}
  ${tabWords(keeper)} ${fullWords(keeper)}
  ${news.link ? told(linkWords[news.link], done('link')) : nothing}
  ${news.gone ? told('The site this address names is not kept in this browser.', done('gone')) : nothing}
  ${news.file ? told(`${news.file} Nothing was opened.`, done('file')) : nothing}
  ${
    news.unfetched
      ? told(`‘${news.unfetched}’ could not be fetched: there may be no network.`, done('unfetched'))
      : nothing
  }
  ${memory.damaged === undefined ? nothing : damagedScreen(keeper, memory.damaged)}
  ${asideWords(keeper)}`;
}

const linkWords: Record<NonNullable<News['link']>, string> = {
  cut: 'The link is not whole: it was cut short or changed on its way. Ask for it once more, and copy all of it.',
  newer:
    'The link was made by a newer version of this page. Load the page anew while there is a network, then open it again.',
};

function tabWords(keeper: Keeper): Words {
  const { elsewhere, parted, deleted } = keeper.news;
  const { named } = keeper;
  if (parted !== undefined) {
    const show = press('show the other tab’s', () => keeper.choose({ kind: 'own', id: parted }));
    const stay = press('stay with this one', () => keeper.tell({ parted: undefined }));
    return told(
      'This site was edited in another tab, too. Both are kept: what you did here is now a site of its own.',
      show,
      stay,
    );
  }
  if (deleted)
    return told(
      'This site was deleted in another tab.',
      press('keep it all the same', () => keeper.keepAnew()),
    );
  if (!elsewhere || named.kind !== 'own') return nothing;
  const show = press('show it as it stands there', () => keeper.choose(named));
  return told('This site was edited in another tab. What you edit here becomes a site of its own.', show);
}

function fullWords(keeper: Keeper): Words {
  const { news, memory } = keeper;
  const save = press('save the file', () => saveSite(keeper));
  if (news.put === 'full')
    return told(
      'This browser keeps no more: the edits of this site will be gone after a reload. Delete a site that you no longer need, or save this one.',
      save,
    );
  if (memory.refused)
    return told('This browser keeps no more: what is on the screen will be gone after a reload.', save);
  if (news.put === 'short')
    return told('This browser is nearly full: the site is kept, but not the steps to undo after a reload.', save);
  return nothing;
}

function damagedScreen(keeper: Keeper, text: string): TemplateResult {
  const keep = (): void => {
    saveAside({ key: 'tumblebay page', text });
    keeper.memory.damaged = undefined;
    keeper.tell({});
  };
  return told(
    'What this browser had kept of the page could not be read, so the page opened anew.',
    press('save what it had kept', keep),
  );
}

/** Sites of this browser that cannot be shown stay where they are until they are let go. */
function asideWords(keeper: Keeper): TemplateResult {
  const { damaged, newer } = stock();
  const each = (aside: Aside, words: string): TemplateResult =>
    told(
      words,
      press('save it as a file', () => saveAside(aside)),
      press('let it go', () => letGo(keeper, aside)),
    );
  return html`${damaged.map((aside) => each(aside, 'A site kept in this browser is damaged and cannot be read.'))}
  ${newer.map((aside) => each(aside, 'A site kept in this browser was edited by a newer version of this page; it is left as it is.'))}`;
}

function shareView(keeper: Keeper): Words {
  const { share } = keeper.news;
  if (!share) return nothing;
  const copy = async (): Promise<void> => keeper.tell({ share: { ...share, copied: await copied(share.link) } });
  return html`<section class="share" aria-label="Share">
    <p role="status">${share.copied ? 'The link is on the clipboard.' : 'The link could not be put on the clipboard: copy it from here.'}
      It carries this whole site, with all its figures; nothing is sent anywhere.</p>
    <label>the link<input type="text" readonly .value=${share.link} @focus=${(event: Event) => (event.target as HTMLInputElement).select()} /></label>
    ${press('copy it again', () => void copy())} ${press('close', () => keeper.tell({ share: undefined }))}
  </section>`;
}
