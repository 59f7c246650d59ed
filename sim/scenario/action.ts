/** When an action happens: at a time (s from the start), or each time a level crosses. */
export type Timing =
  | { readonly at: number }
  | { readonly when: { readonly basin: string; readonly crossing: 'rises' | 'falls'; readonly level: number } };

export type Deed =
  | { readonly do: 'pump'; readonly to: 'on' | 'off' | number }
  | { readonly do: 'power'; readonly to: 'on' | 'off'; readonly for: number | undefined }
  /** `name` undefined: every hose. */
  | { readonly do: 'hose'; readonly to: 'on' | 'off'; readonly name: string | undefined }
  | { readonly do: 'autofill'; readonly to: 'on' | 'off' }
  | { readonly do: 'bottom valve'; readonly to: number }
  | { readonly do: 'top valve'; readonly to: number }
  | { readonly do: 'storm'; readonly depth: number; readonly lasting: number; readonly shape: 'even' | 'scs2' }
  /** `of`: 'intake', or a stone's or stream's name. */
  | { readonly do: 'blockage'; readonly of: string; readonly to: number }
  | { readonly do: 'clean filter' }
  | { readonly do: 'check valve'; readonly to: 'failed' | 'sound' }
  | { readonly do: 'leak'; readonly in: string; readonly elevation: number; readonly area: number }
  | { readonly do: 'pump out'; readonly flow: number; readonly until: number };

/** One action of the file; `daily` times are seconds after midnight, on from odd entries, off from even ones. */
export type Action =
  | { readonly timing: Timing; readonly deed: Deed; readonly place: string }
  | { readonly daily: readonly number[]; readonly deed: { readonly do: 'pump' }; readonly place: string };
