import type { Stretch } from '../../../sim/studies/aim.ts';
import { withSetting } from '../../../sim/studies/setting.ts';
import type { Engine } from '../../engine/client.ts';
import type { Dial, Ruler } from '../../state/dials.ts';
import type { Session } from '../../state/session.ts';

/** Where the answer turns on one dial. */
export interface Turns {
  readonly failing: readonly Stretch[];
  /** Found for an earlier state of the site. */
  readonly isOld: boolean;
}

interface Found {
  readonly failing: readonly Stretch[];
  /** The file it was found for, and all of it that bears on it. */
  readonly file: unknown;
  readonly rest: string;
}

/** Looks for the places where the answer turns, dial by dial, when no question waits. */
export class TurnSearch {
  readonly #session: Session;
  readonly #engine: Pick<Engine, 'give'>;
  readonly #changed: () => void;
  #found = new Map<string, Found>();
  #told: ReadonlyMap<string, Turns> = new Map();
  #searches = 0;
  #about: unknown;

  constructor(session: Session, engine: Pick<Engine, 'give'>, changed: () => void) {
    this.#session = session;
    this.#engine = engine;
    this.#changed = changed;
  }

  /** By the dial's name; the same map until something is found or the file changes. */
  told(turned: string | undefined): ReadonlyMap<string, Turns> {
    const file = this.#session.doc?.now.file;
    const isOld = (name: string, found: Found): boolean => found.file !== file && name !== turned;
    const told = this.#told;
    const entries = [...this.#found];
    const same =
      told.size === entries.length &&
      entries.every(([name, found]) => {
        const was = told.get(name);
        return was?.failing === found.failing && was.isOld === isOld(name, found);
      });
    if (!same) this.#told = new Map(entries.map(([name, found]) => [name, { ...found, isOld: isOld(name, found) }]));
    return this.#told;
  }

  forget(): void {
    this.#found = new Map();
    this.#about = undefined;
  }

  /** Looks again wherever the file has changed since, dials that do not bear on themselves left as they are. */
  async search(dials: readonly Dial[]): Promise<void> {
    const { about, isWhole, doc } = this.#session;
    const search = ++this.#searches;
    if (about === 'filling' || !isWhole || !doc) return;
    if (this.#about !== about) this.forget();
    this.#about = about;
    const { file } = doc.now;
    for (const dial of dials) {
      if (dial.kind !== 'ruler') continue;
      const failing = await this.#failing(dial, file, about);
      if (failing === undefined || search !== this.#searches) return;
      this.#changed();
    }
  }

  async #failing(dial: Ruler, file: unknown, asked: 'stop' | 'filter'): Promise<readonly Stretch[] | undefined> {
    const { setting, low, high, step, name } = dial;
    // What the dial itself sets has no part in where the answer turns along its ruler.
    const rest = `${low} ${high} ${JSON.stringify(withSetting(file, setting, low))}`;
    const known = this.#found.get(name);
    if (known?.rest === rest) {
      this.#found.set(name, { ...known, file });
      return known.failing;
    }
    const text = JSON.stringify(file);
    const given = await this.#engine.give({
      want: 'turns',
      text,
      setting,
      asked,
      range: [low, high],
      within: step / 2,
    });
    if (given === 'superseded' || given.kind !== 'turns' || text !== this.#session.text) return undefined;
    this.#found.set(name, { failing: given.failing, file, rest });
    return given.failing;
  }
}
