/**
 * A run that could not be carried to its end: where it stood, which part of the site was the cause, and as message what
 * that part did, to be said after the part.
 */
export class RunFailure extends Error {
  override readonly name = 'RunFailure';
  readonly kind: 'capped' | 'no solution';
  /** Seconds from the start of the run. */
  readonly time: number;
  /** The basin, switch or flow that the run could not get past. */
  readonly part: string;

  constructor(kind: 'capped' | 'no solution', time: number, part: string, message: string) {
    super(message);
    this.kind = kind;
    this.time = time;
    this.part = part;
  }

  /** Part and message, without the time. */
  get words(): string {
    return `${this.part}: ${this.message}`;
  }
}
