import type { Session } from '../state/session.ts';

/** A figure may be older than what is set for so long before that is said, ms. */
const A_WHILE = 600;

/** Whether what is on the screen has been older than the file for a while: the worker is at it, or slept with the phone. */
export class Late {
  late = false;
  readonly #changed: () => void;
  readonly #session: Pick<Session, 'shown' | 'isOld' | 'computing'>;
  #of: unknown;
  #wait: ReturnType<typeof setTimeout> | undefined;

  constructor(changed: () => void, session: Pick<Session, 'shown' | 'isOld' | 'computing'>) {
    this.#changed = changed;
    this.#session = session;
  }

  /** To be called whenever the session has changed. */
  look(): void {
    const { shown, isOld, computing } = this.#session;
    const old = isOld && computing;
    if (old && shown === this.#of) return;
    clearTimeout(this.#wait);
    this.late = false;
    this.#of = old ? shown : undefined;
    if (!old) return;
    this.#wait = setTimeout(() => {
      this.late = true;
      this.#changed();
    }, A_WHILE);
  }
}
