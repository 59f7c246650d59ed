import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { JsonSchema } from '../../../sim/scenario/fields.ts';
import type { Problem } from '../../../sim/scenario/scenario.ts';
import { type FieldRow, fieldsOf } from '../../state/fields.ts';
import type { Part } from '../../state/part-names.ts';
import { shared } from '../styles.ts';
import { typing } from '../typing.ts';

/** A value of the file was typed or chosen; undefined takes the key away. */
export interface Typed {
  readonly place: string;
  readonly to: unknown;
}

/** All keys of one part of the file, a field a row, with what is wrong beside each. */
@customElement('tb-part')
export class PartView extends LitElement {
  static override styles = [
    shared,
    css`
      .title { display: flex; align-items: baseline; justify-content: space-between; border-top: 1.3px solid var(--ink); }
      .row { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 128px) 44px; align-items: center; border-top: 0.8px solid var(--rule); font-size: 15px; }
      .row.pair {
        grid-template-columns: 2ch minmax(0, 1fr) 44px;
      }
      .pair {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 12px;
      }
      .row.heading { grid-template-columns: minmax(0, 1fr) auto; font-style: italic; color: var(--ink2); min-height: 36px; }
      .row[data-depth='1'] { padding-left: 12px; }
      .row[data-depth='2'] { padding-left: 24px; }
      .row[data-depth='3'], .row[data-depth='4'] { padding-left: 36px; }
      input, select { font: inherit; color: inherit; background: transparent; border: 0; border-bottom: 1px solid var(--ink2); border-radius: 0; min-height: 44px; width: 100%; padding: 0 2px; text-align: right; }
      input[aria-invalid='true'] { border-bottom: 2.5px solid var(--ink); }
      .away { text-decoration: none; min-width: 44px; color: var(--ink2); }
      .about, .wrong { grid-column: 1 / -1; margin: 0 0 4px; font-size: 13px; line-height: 17px; font-style: italic; color: var(--ink2); }
      .wrong { color: var(--ink); border-left: 3px solid var(--ink); padding-left: 8px; }
    `,
  ];

  @property({ attribute: false }) of: Part = { place: 'pond', name: 'pond' };
  @property({ attribute: false }) file: unknown;
  @property({ attribute: false }) schema: JsonSchema | undefined;
  @property({ attribute: false }) problems: readonly Problem[] = [];

  #type(place: string, to: unknown): void {
    const detail: Typed = { place, to };
    this.dispatchEvent(new CustomEvent('value-typed', { detail, bubbles: true, composed: true }));
  }

  #add(place: string): void {
    if (place) this.dispatchEvent(new CustomEvent('key-added', { detail: place, bubbles: true, composed: true }));
  }

  #input(row: FieldRow, wrong: boolean): TemplateResult {
    const { place, name, value, options } = row;
    const id = `at ${place}`;
    if (row.kind === 'flag') {
      return html`<select id=${id} aria-label=${name} @change=${(e: Event) => this.#type(place, (e.target as HTMLSelectElement).value === 'yes')}>
        <option ?selected=${value === true}>yes</option><option ?selected=${value === false}>no</option>
      </select>`;
    }
    if (row.kind === 'words') {
      return html`<select id=${id} @change=${(e: Event) => this.#type(place, (e.target as HTMLSelectElement).value)}>
        ${options.map((option) => html`<option ?selected=${option === value}>${option}</option>`)}
      </select>`;
    }
    return html`<input id=${id} type="text" autocomplete="off" spellcheck="false" .value=${typing(String(value ?? ''))}
      aria-invalid=${wrong} @change=${(e: Event) => this.#type(place, (e.target as HTMLInputElement).value)} />`;
  }

  #away({ place, name, optional }: FieldRow): TemplateResult | typeof nothing {
    if (!optional) return nothing;
    const says = `take ${name} away`;
    return html`<button class="away" aria-label=${says} title=${says} @click=${() => this.#type(place, undefined)}>−</button>`;
  }

  #more({ place, name, value }: FieldRow): TemplateResult | typeof nothing {
    if (!Array.isArray(value)) return nothing;
    const next = `${place}[${value.length}]`;
    return html`<button class="away" aria-label="one more in ${name}" title="one more" @click=${() => this.#add(next)}>+</button>`;
  }

  /** Two figures side by side: a station or an elevation, and what it has there. */
  #pair({ place, name, value, about }: FieldRow, wrong: boolean): TemplateResult {
    const words = about.replace(/[[\]]/g, '').split(', ');
    return html`<span class="pair">${(value as unknown[]).map(
      (each, i) => html`<input type="text" autocomplete="off" spellcheck="false" .value=${typing(String(each))}
        aria-label="${name}: ${words[i] ?? ''}" aria-invalid=${wrong}
        @change=${(e: Event) => this.#type(`${place}[${i}]`, (e.target as HTMLInputElement).value)} />`,
    )}</span>`;
  }

  #row(row: FieldRow): TemplateResult {
    const { place, name, about, depth, kind, value } = row;
    const wrong = this.problems.filter(
      (problem) => problem.place === place || (kind === 'pair' && problem.place.startsWith(`${place}[`)),
    );
    const says = wrong.map(
      ({ found, wanted }) => html`<p class="wrong" role="alert">found ${found}; wanted ${wanted}</p>`,
    );
    if (kind === 'heading') {
      const words = about ? `${name}: ${about}` : name;
      return html`<div class="row heading" data-depth=${depth}><span>${words}</span><span>${this.#away(row)}${this.#more(row)}</span>${says}</div>`;
    }
    const input = kind === 'pair' ? this.#pair(row, wrong.length > 0) : this.#input(row, wrong.length > 0);
    // The unit of a bare number says nothing beside one that has its own.
    const note = kind === 'pair' || (typeof value === 'string' && !about.includes(' ')) ? '' : about;
    return html`<div class="row ${kind}" data-depth=${depth}>
      <label for="at ${place}">${name}</label>${input}${this.#away(row)}
      ${note ? html`<p class="about">${note}</p>` : nothing}${says}
    </div>`;
  }

  /** Problems of the part that stand at no row: a key that is missing, or one that isn't known. */
  #others(rows: readonly FieldRow[]): TemplateResult[] {
    const { place } = this.of;
    return this.problems
      .filter((problem) => problem.place.startsWith(place) && !rows.some((row) => problem.place.startsWith(row.place)))
      .map(
        (problem) =>
          html`<p class="wrong" role="alert"><i>${problem.place}</i>: found ${problem.found}; wanted ${problem.wanted}</p>`,
      );
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.schema) return nothing;
    const { rows, missing } = fieldsOf(this.schema, this.file, this.of.place);
    return html`<section aria-label="Inputs: ${this.of.name}">
      <div class="title">
        <h3 tabindex="-1">${this.of.name}</h3>
        <button @click=${() => this.dispatchEvent(new CustomEvent('part-closed', { bubbles: true, composed: true }))}>close</button>
      </div>
      ${this.#others(rows)}
      ${repeat(
        rows,
        ({ place }) => place,
        (row) => this.#row(row),
      )}
      ${
        missing.length > 0
          ? html`<div class="row"><label for="more">what it may have besides</label>
            <select id="more" @change=${(e: Event) => {
              const field = e.target as HTMLSelectElement;
              this.#add(field.value);
              field.value = '';
            }}>
              <option value="">add …</option>
              ${missing.map(({ place, name, about }) => html`<option value=${place} title=${about}>${name}</option>`)}
            </select></div>`
          : nothing
      }
    </section>`;
  }
}
