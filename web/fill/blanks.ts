/** Blanks to be filled in: what was typed stays in its field, also where it can't be read, with what is wrong beside it. */
import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { TypedFigure } from './typed-figure.ts';

export interface Blank {
  /** Told apart from every other blank of the view by it. */
  readonly key: string;
  /** What a screen reader calls it. */
  readonly label: string;
  /** What stands there until something is typed. */
  readonly stands: string;
  /** Width in characters. */
  readonly wide: number;
  /** Read and taken; words where it can't be. */
  readonly take: (text: string) => string | undefined;
}

export class Blanks {
  readonly #host: ReactiveControllerHost;
  readonly #wrong = new Map<string, { readonly text: string; readonly says: string }>();
  /** Being typed: what is answered meanwhile leaves the field alone. */
  readonly #typing = new Map<string, string>();

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  field({ key, label, stands, wide, take }: Blank): TemplateResult {
    const wrong = this.#wrong.get(key);
    const says = `says ${key}`;
    return html`<input type="text" autocomplete="off" spellcheck="false" aria-label=${label} size=${wide}
      .value=${live(this.#typing.get(key) ?? wrong?.text ?? stands)} aria-invalid=${wrong !== undefined} aria-describedby=${wrong ? says : nothing}
      @input=${(event: Event) => this.#typing.set(key, (event.target as HTMLInputElement).value)}
      @change=${(event: Event) => this.#take(key, (event.target as HTMLInputElement).value, take)} />`;
  }

  /** What is wrong with any of some blanks. */
  says(...keys: string[]): TemplateResult[] {
    return keys.flatMap((key) => {
      const wrong = this.#wrong.get(key);
      return wrong ? [html`<p class="wrong" id="says ${key}" role="alert">${wrong.says}</p>`] : [];
    });
  }

  #take(key: string, text: string, take: Blank['take']): void {
    this.#typing.delete(key);
    const says = take(text);
    if (says === undefined) this.#wrong.delete(key);
    else this.#wrong.set(key, { text, says });
    this.#host.requestUpdate();
  }
}

/** Takes a figure that was read, unless it is out of what makes sense; tells what is wrong. */
export function taken(
  read: TypedFigure,
  put: (value: number | undefined) => void,
  sense: (value: number) => string | undefined = () => undefined,
): string | undefined {
  if ('wrong' in read) return read.wrong;
  const wrong = read.value === undefined ? undefined : sense(read.value);
  if (wrong === undefined) put(read.value);
  return wrong;
}

/** A row: the name at the left, blanks and words at the right, what is wrong under it. */
export function row(name: string, figures: unknown, says: unknown = nothing): TemplateResult {
  return html`<div class="blank" role="group" aria-label=${name}>
    <span class="name" aria-hidden="true">${name}</span><span class="figures">${figures}</span>${says}
  </div>`;
}
