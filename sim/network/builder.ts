import { type CrestLine, makeCrest } from '../laws/crest.ts';
import { makeStorage, type Storage } from '../laws/storage.ts';
import type { BasinParts, Crest } from '../scenario/scenario.ts';
import type { Pattern } from '../solver/system.ts';
import { LEDGER } from './ledger.ts';
import {
  type CrestLink,
  type HoleLink,
  type Link,
  NONE,
  type SeepLink,
  type StreamLink,
  type SurfaceLink,
} from './link.ts';

/** Places of a sparse matrix, each named once, in the order in which they were first asked for. */
export class PlaceList {
  private readonly known = new Map<number, number>();
  private readonly rows: number[] = [];
  private readonly columns: number[] = [];

  place(row: number, column: number): number {
    const key = row * 2 ** 20 + column;
    const at = this.known.get(key);
    if (at !== undefined) return at;
    this.known.set(key, this.rows.length);
    this.rows.push(row);
    this.columns.push(column);
    return this.rows.length - 1;
  }

  pattern(): Pattern {
    return { rows: Int32Array.from(this.rows), columns: Int32Array.from(this.columns) };
  }
}

export interface Basin {
  readonly name: string;
  readonly storage: Storage;
  /** Plan area that catches rain, m²; 0 under cover. */
  readonly catchment: number;
  /** How much higher the water stands where it enters than the level says (streams), m. */
  readonly entry: number;
}

/** Collects the basins and links of a site; the parts of the site add theirs in turn. */
export class Builder {
  readonly basins: Basin[] = [];
  readonly flows: string[] = [];
  readonly crests: CrestLink[] = [];
  readonly seeps: SeepLink[] = [];
  readonly streams: StreamLink[] = [];
  readonly holes: HoleLink[] = [];
  readonly surfaces: SurfaceLink[] = [];
  readonly jacobian = new PlaceList();
  readonly gradient = new PlaceList();
  /** Leaks of the file by basin: the state the settings start from. */
  readonly leaks: { basin: number; elevation: number; area: number }[] = [];

  basin(name: string, storage: Storage, catchment = 0, entry = 0): number {
    const i = this.basins.length;
    this.basins.push({ name, storage, catchment, entry });
    this.jacobian.place(i, i);
    this.gradient.place(LEDGER.leak, i);
    return i;
  }

  /** A basin of the file, open to the sky or not, with its leak. */
  fromParts(name: string, parts: BasinParts, sky: { cover: number } | undefined): number {
    const storage = makeStorage(parts.profile, parts.displaced);
    const i = this.basin(name, storage, sky ? parts.profile[parts.profile.length - 1][1] : 0);
    if (sky) this.surface(i, sky.cover);
    if (parts.leak) this.leaks.push({ basin: i, ...parts.leak });
    return i;
  }

  indexOf(name: string): number {
    return this.basins.findIndex((b) => b.name === name);
  }

  flow(name: string): number {
    const known = this.flows.indexOf(name);
    return known >= 0 ? known : this.flows.push(name) - 1;
  }

  /** @param flow name of the flow, '' for one that is only counted in the ledger */
  link(flow: string, from: number, to: number, row: number = NONE, splash = 0): Link {
    const at = (matrix: PlaceList, r: number, c: number): number => (r >= 0 && c >= 0 ? matrix.place(r, c) : NONE);
    const splashRow = splash > 0 ? LEDGER.splash : NONE;
    return {
      flow: flow === '' ? NONE : this.flow(flow),
      from,
      to,
      row,
      splash,
      ff: at(this.jacobian, from, from),
      ft: at(this.jacobian, from, to),
      tf: at(this.jacobian, to, from),
      tt: at(this.jacobian, to, to),
      rowByFrom: at(this.gradient, row, from),
      rowByTo: at(this.gradient, row, to),
      splashByFrom: at(this.gradient, splashRow, from),
      splashByTo: at(this.gradient, splashRow, to),
    };
  }

  crest(name: string, from: number, to: number, line: CrestLine, open = 1, row: number = NONE, splash = 0): void {
    this.crests.push({ link: this.link(name, from, to, row, splash), name, line, open });
  }

  /** An edge that loses what passes it. */
  lostOver(name: string, from: number, edge: Crest, row: number): void {
    this.crest(name, from, NONE, makeCrest(edge.crest, edge.cd), 1, row);
  }

  surface(basin: number, cover: number): void {
    const link = this.link('', basin, NONE, LEDGER.evaporation);
    this.surfaces.push({ link, cover, floor: this.basins[basin].storage.z[0] });
  }
}
