import { noChange } from 'lit';
import { Directive, directive, type ElementPart, type PartInfo, type PropertyPart } from 'lit/directive.js';

/**
 * The text of a field into which somebody may be typing: an answer that comes meanwhile neither writes over what the
 * hand has begun nor lets go what it has marked. Used as `.value=${typing(text)}`.
 */
class Typing extends Directive {
  #bound: string | undefined;
  /** Came while the hand was at work; written where the hand leaves without having changed anything. */
  #waiting: string | undefined;
  #atWork = false;
  readonly #field: HTMLInputElement;

  constructor(part: PartInfo) {
    super(part);
    const field = (part as ElementPart).element as HTMLInputElement;
    this.#field = field;
    field.addEventListener('input', () => {
      this.#atWork = true;
    });
    field.addEventListener('change', () => this.#rest());
    field.addEventListener('blur', () => {
      const waiting = this.#waiting;
      this.#rest();
      if (waiting !== undefined) this.#write(waiting);
    });
  }

  render(_text: string): typeof noChange {
    return noChange;
  }

  override update(_part: PropertyPart, [text]: [string]): typeof noChange {
    if (text === this.#bound) return noChange;
    this.#bound = text;
    if (this.#atWork) this.#waiting = text;
    else this.#write(text);
    return noChange;
  }

  #rest(): void {
    this.#atWork = false;
    this.#waiting = undefined;
  }

  #write(text: string): void {
    const field = this.#field;
    const isMarked = field.matches(':focus') && field.value !== '' && field.selectionEnd === field.value.length;
    const isWhole = isMarked && field.selectionStart === 0;
    field.value = text;
    if (isWhole) field.select();
  }
}

export const typing = directive(Typing);
