/** What is being edited and what came of it: keeps the two apart, and asks again whenever the file changes. */
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import type { Engine } from '../engine/client.ts';
import type { Answered, Depth, Display, FileEdits, Outcome, Subject } from '../engine/protocol.ts';
import { type Document, edited, openDocument, redone, saved, undone } from './document.ts';
import { expanded, grafted } from './graft.ts';

/** A hand that has not moved for this long rests, ms: then the answer in full is asked for. */
const REST = 150;
/** Where a quick answer takes longer, the page shows what was typed before it, ms; else both in one frame. */
const SOON = 30;

type Asking = Pick<Engine, 'ask'>;

export class Session {
  /** undefined where the file's text is no JSON. */
  doc: Document | undefined;
  /** The last good answer, quick or full; undefined until a file has had one. */
  shown: Answered | undefined;
  /** The last good answer in full. */
  full: Answered | undefined;
  /** The site as it was opened: what the ranges of its dials are laid out by. */
  base: Scenario | undefined;
  /** Why the file as it stands has no answer. */
  trouble: Exclude<Outcome, Answered> | undefined;
  computing = false;
  /** undefined: as the file has it. */
  display: Display | undefined;
  about: Subject = 'stop';

  readonly #engine: Asking;
  readonly #changed: () => void;
  #name = '';
  #text = '';
  #asked = 0;
  #answered = 0;
  #shownFile: unknown;
  #fullFile: unknown;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(engine: Asking, changed: () => void) {
    this.#engine = engine;
    this.#changed = changed;
  }

  get name(): string {
    return this.#name;
  }

  /** The file as it stands, as the worker reads it. */
  get text(): string {
    return this.doc ? JSON.stringify(this.doc.now.file) : this.#text;
  }

  /** What is on the screen is older than what was typed. */
  get isOld(): boolean {
    return this.shown !== undefined && this.doc !== undefined && this.#shownFile !== this.doc.now.file;
  }

  /** Checks, bands and mends on the screen are of the file as it stands. */
  get isWhole(): boolean {
    const file = this.doc?.now.file;
    return this.full !== undefined && this.#fullFile === file && this.#shownFile === file;
  }

  open(name: string, text: string): void {
    this.#name = name;
    this.#text = text;
    this.doc = openDocument(name, text);
    this.shown = undefined;
    this.full = undefined;
    this.base = undefined;
    this.trouble = undefined;
    void this.#begin();
  }

  /** The question's own answer first, so that it stands on the screen before every check is done. */
  async #begin(): Promise<void> {
    const first = this.#asked + 1;
    await this.#ask('quick');
    if (this.#asked === first && !this.trouble && !this.isWhole) void this.#ask('full');
  }

  /** @param gesture edits with the same one are undone together, and answered quickly until the hand rests */
  edit(file: unknown, label: string, gesture?: unknown): void {
    if (this.doc) this.#put(edited(this.doc, file, label, gesture));
  }

  /** Several places of the file at once, as one step. */
  put(edits: FileEdits, label: string): void {
    if (this.doc) this.edit(withValuesAt(this.doc.now.file, edits), label);
  }

  /** Several places of the whole file, to which a sketch came in the last answer: they stand beside its numbers. */
  putWhole(edits: FileEdits, label: string, gesture?: unknown): void {
    if (!this.doc) return;
    const plain = this.shown?.plain ?? null;
    const changed = withValuesAt(expanded(this.doc, plain).now.file, edits);
    this.edit(grafted(this.doc.now.file, plain, changed), label, gesture);
  }

  undo(): void {
    if (this.doc) this.#put(undone(this.doc));
  }

  redo(): void {
    if (this.doc) this.#put(redone(this.doc));
  }

  save(): void {
    if (this.doc) this.doc = saved(this.doc);
    this.#changed();
  }

  showIn(display: Display): void {
    this.display = display;
    this.#ask('full');
  }

  askAbout(about: Subject): void {
    this.about = about;
    this.#changed();
  }

  #put(doc: Document): void {
    if (doc === this.doc) return;
    this.doc = doc;
    this.#ask('quick');
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.#ask('full'), REST);
  }

  async #ask(depth: Depth): Promise<void> {
    if (depth === 'full') clearTimeout(this.#rest);
    const number = ++this.#asked;
    const file = this.doc?.now.file;
    const { text, display, about } = this;
    const name = this.#name;
    this.computing = true;
    const late = setTimeout(this.#changed, depth === 'full' ? 0 : SOON);
    const outcome = await this.#engine.ask({ text, display, depth, about });
    clearTimeout(late);
    if (outcome === 'superseded' || number < this.#answered || name !== this.#name) return;
    this.#answered = number;
    if (number === this.#asked) this.computing = false;
    this.#take(outcome, file);
    this.#changed();
  }

  #take(outcome: Outcome, file: unknown): void {
    if (outcome.kind !== 'answered') {
      // An earlier state's trouble is no news of the present one.
      if (file === this.doc?.now.file) this.trouble = outcome;
      return;
    }
    this.trouble = undefined;
    this.shown = outcome;
    this.#shownFile = file;
    this.base ??= outcome.scenario;
    if (outcome.depth === 'full') {
      this.full = outcome;
      this.#fullFile = file;
    }
  }
}
