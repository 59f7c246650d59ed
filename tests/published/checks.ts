/** What a check rests on: a number printed elsewhere, a formula or closed form, or another library's output. */
export type Kind = 'published value' | 'derived' | 'library regression';

/** One figure of ours beside one from outside. */
export interface Check {
  readonly id: string;
  readonly source: string;
  /** The value was recalled, not read. */
  readonly memory: boolean;
  readonly kind: Kind;
  /** Largest error allowed, relative to `expected`. */
  readonly tolerance: number;
  readonly expected: number;
  /** Our figure, computed when it is asked for. */
  readonly got: () => number;
}

export interface Outcome extends Omit<Check, 'got'> {
  readonly got: number;
  /** |got − expected|/|expected|. */
  readonly error: number;
}

/** Every check of the files that have been imported. */
export const checks: Check[] = [];

export function published(check: Check): void {
  if (checks.some(({ id }) => id === check.id)) throw new Error(`two checks are called ${check.id}`);
  if (!(check.expected !== 0 && Number.isFinite(check.expected))) throw new Error(`${check.id} expects nothing`);
  checks.push(check);
}

/** What several checks from one source share. */
export type Common = Pick<Check, 'source' | 'kind' | 'tolerance'> & { readonly memory?: boolean };

/** Checks from one source: `id` of each, what it expects, and what we get. */
export function publishedBy(common: Common, rows: readonly (readonly [string, number, () => number])[]): void {
  for (const [id, expected, got] of rows) published({ memory: false, ...common, id, expected, got });
}

export function outcomeOf(check: Check): Outcome {
  const got = check.got();
  return { ...check, got, error: Math.abs(got - check.expected) / Math.abs(check.expected) };
}

/** An error that is no number fails too. */
export const holds = ({ error, tolerance }: Outcome): boolean => error <= tolerance;
