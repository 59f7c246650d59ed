import { css, html, LitElement, type TemplateResult } from 'lit';
import { printAsBefore } from './paper.ts';

/** The screen round a sheet, in the page's look; comes after a sheet's own rules, since on paper it leads. */
export const overStyles = css`
  :host {
    position: fixed;
    inset: 0;
    z-index: 10;
    overflow: auto;
    background: var(--paper);
    color: var(--ink);
  }
  .presses {
    display: flex;
    padding: 8px 16px;
  }
  .presses > div {
    display: flex;
  }
  .presses button {
    min-width: 44px;
  }
  @media print {
    :host {
      position: static;
      overflow: visible;
      background: #fff;
    }
    .presses {
      display: none;
    }
  }
`;

/** A sheet of paper over the page, which rests under it until a press or Escape closes it. */
export class OverPage extends LitElement {
  #woken: readonly HTMLElement[] = [];
  #before: HTMLElement | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#keys);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.removeEventListener('keydown', this.#keys);
    printAsBefore();
  }

  readonly #keys = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.close();
  };

  layOver(): void {
    this.#before = deepFocus();
    this.#woken = [...document.body.children].filter(
      (each) => each instanceof HTMLElement && !each.inert,
    ) as HTMLElement[];
    for (const each of this.#woken) each.inert = true;
    this.classList.add('sheet');
    document.body.append(this);
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.back')?.focus());
  }

  /** Where the hand was when it was laid over, it is again. */
  close(): void {
    this.remove();
    for (const each of this.#woken) each.inert = false;
    this.#before?.focus();
  }

  /** The sheet under the presses that every sheet has, and its own. */
  protected dialog(name: string, presses: unknown, sheet: TemplateResult): TemplateResult {
    return html`<div role="dialog" aria-modal="true" aria-label=${name}>
      <div class="presses">
        <div><button class="back" @click=${() => this.close()}>back to the page</button>
          <button @click=${() => print()}>print</button></div>
        ${presses}
      </div>
      ${sheet}
    </div>`;
  }
}

/** What has the focus, inside of elements too. */
function deepFocus(): HTMLElement | undefined {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at instanceof HTMLElement ? at : undefined;
}
