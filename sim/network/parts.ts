import type { Pattern } from '../solver/system.ts';
import type { Basin } from './builder.ts';
import type { Circuit } from './circuit.ts';
import type { Clogging } from './clogging.ts';
import type { CrestLink, FloatLink, HoleLink, Link, OverflowLink, SeepLink, StreamLink, SurfaceLink } from './link.ts';
import type { OpenLeak } from './settings.ts';

/** Everything the assembly hands over; see `assemble.ts`. */
export interface NetworkParts {
  readonly basins: readonly Basin[];
  readonly flowNames: readonly string[];
  readonly crests: readonly CrestLink[];
  readonly seeps: readonly SeepLink[];
  readonly streams: readonly StreamLink[];
  readonly surfaces: readonly SurfaceLink[];
  readonly circuit: Circuit;
  /** undefined where the water carries no debris or there are no media. */
  readonly clogging: Clogging | undefined;
  readonly pond: number;
  readonly overflow: OverflowLink | undefined;
  readonly autofill: FloatLink | undefined;
  readonly draw: Link;
  /** Surface that drains into the pond, m², and its runoff coefficient. */
  readonly runoff: { readonly area: number; readonly coefficient: number };
  readonly leaks: readonly OpenLeak[];
  readonly jacobianPattern: Pattern;
  readonly quadraturePattern: Pattern;
  readonly quadratures: number;
  /** Makes the link of a leak in a basin. */
  readonly leakLink: (basin: number, elevation: number, area: number) => HoleLink;
  readonly setBottomValve: (opening: number) => void;
  readonly setTopValve: (opening: number) => void;
}
