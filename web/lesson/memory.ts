/** Keeps beside the page, for its tab, that a lesson goes on: a reload goes on with it. */

export interface Remembered {
  /** The address's part from '#' on, under which its site stands. */
  readonly address: string;
  readonly step: number;
  /** The address of the site that was open before. */
  readonly before: string;
}

const KEY = 'tumblebay lesson';

/** undefined where no lesson goes on, or the browser keeps nothing for us. */
export function recall(store: () => Pick<Storage, 'getItem'>): Remembered | undefined {
  try {
    const { address, step, before } = JSON.parse(store().getItem(KEY) ?? '{}');
    const isSound = typeof address === 'string' && typeof before === 'string' && Number.isInteger(step);
    return isSound ? { address, step, before } : undefined;
  } catch {
    return undefined;
  }
}

/** @param lesson undefined: none goes on */
export function remember(store: () => Pick<Storage, 'setItem' | 'removeItem'>, lesson: Remembered | undefined): void {
  try {
    if (lesson) store().setItem(KEY, JSON.stringify(lesson));
    else store().removeItem(KEY);
  } catch {
    // A lesson that is not kept begins anew.
  }
}
