/** Something due at a time; what falls together is done in the order of `rank`, then of entry. */
export interface Due {
  readonly t: number;
  readonly rank: number;
  readonly act: (t: number) => void;
}

/** What is due when: entries may be added while others are done. */
export class Agenda {
  private readonly entries: Due[] = [];
  private done = 0;

  add(due: Due): void {
    let at = this.entries.length;
    while (at > this.done && later(this.entries[at - 1], due)) at--;
    this.entries.splice(at, 0, due);
  }

  /** Time of the next entry, Infinity where there is none. */
  next(): number {
    return this.done < this.entries.length ? this.entries[this.done].t : Number.POSITIVE_INFINITY;
  }

  /** Does all that is due up to a time, what is added meanwhile included; returns whether there was anything. */
  doDue(t: number): boolean {
    let any = false;
    while (this.next() <= t) {
      this.entries[this.done++].act(t);
      any = true;
    }
    return any;
  }
}

function later(a: Due, b: Due): boolean {
  return a.t > b.t || (a.t === b.t && a.rank > b.rank);
}
