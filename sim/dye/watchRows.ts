import type { Network } from '../network/network.ts';
import type { DyePlace, DyeWatch } from './answer.ts';
import type { DyeOnItsWay } from './follow.ts';
import { freeKinds } from './ways.ts';

/** Cells in which the gap's dye is drawn. */
const CELLS = 24;

interface Column {
  readonly place: DyePlace;
  /** Numbers of the places that it sums up; none for the gap. */
  readonly of: readonly number[];
}

/** What is seen of a dye on its way, moment by moment. */
export class WatchRows {
  private readonly dye: DyeOnItsWay;
  private readonly poured: number;
  private readonly t: Float64Array;
  private readonly columns: readonly Column[];
  private readonly gap: Float64Array;
  private readonly lip: readonly Float64Array[];
  private readonly passed: readonly Float64Array[];
  private readonly brought: readonly Float64Array[];
  private readonly volume: Float64Array;
  private closure = 0;

  constructor(dye: DyeOnItsWay, network: Network, rows: number, poured: number) {
    const column = (): Float64Array => new Float64Array(rows);
    this.dye = dye;
    this.poured = poured;
    this.t = column();
    this.columns = columnsOf(dye, network, column);
    this.gap = new Float64Array(rows * CELLS);
    this.lip = [column(), column(), column()];
    this.passed = [column(), column(), column()];
    this.brought = [column(), column()];
    this.volume = new Float64Array(dye.places.size);
  }

  /** Sees the dye in a row, at the moment up to which it has been carried. */
  add(row: number, t: number): void {
    const { dye, volume } = this;
    const { places, mass, plug } = dye;
    const waters = dye.watersAt(t);
    dye.volumesOf(waters, dye.state, volume);
    this.t[row] = t;
    for (const { place, of } of this.columns) {
      place.mass[row] = of.length === 0 ? plug.mass : of.reduce((sum, i) => sum + mass[i], 0);
      place.volume[row] = of.length === 0 ? waters.gap : volume[of[0]];
    }
    plug.spread(CELLS, this.gap, row * CELLS);
    freeKinds(places).forEach((kind, i) => {
      this.lip[i][row] = volume[kind] > 0 ? mass[kind] / volume[kind] : 0;
      this.passed[i][row] = mass[places.passed[i]];
    });
    this.brought[0][row] = mass[places.broughtBottom];
    this.brought[1][row] = mass[places.broughtTop];
    this.closure = Math.max(this.closure, Math.abs(dye.total() / this.poured - 1));
  }

  answer(at: number, says: string): DyeWatch {
    const kinds = ([through, round, other]: readonly Float64Array[]): DyeWatch['lip'] => ({ through, round, other });
    return {
      poured: true,
      at,
      mass: this.poured,
      says,
      t: this.t,
      places: this.columns.map(({ place }) => place),
      gap: { cells: CELLS, mass: this.gap },
      lip: kinds(this.lip),
      passed: kinds(this.passed),
      returned: { bottom: this.brought[0], top: this.brought[1] },
      closure: this.closure,
    };
  }
}

/** All places in the order of the water's way from the plenum on. */
function columnsOf({ places }: DyeOnItsWay, { parts }: Network, column: () => Float64Array): Column[] {
  const make = (name: string, kind: DyePlace['kind'], of: readonly number[]): Column => ({
    place: { name, kind, mass: column(), volume: column() },
    of,
  });
  const { vault, riser, bottom } = parts.circuit;
  const numbers = parts.basins.map((_, i) => i).filter((i) => i !== vault && i !== riser && i !== bottom);
  return [
    make('plenum', 'plenum', [places.plenum]),
    ...places.tanks.map((tank, i) => make(`media ${i + 1}`, 'tank', [tank])),
    make('gap', 'gap', []),
    make('free', 'free', freeKinds(places)),
    make('beside', 'beside', [places.beside]),
    ...[...numbers, vault, riser].map((i) => make(parts.basins[i].name, 'basin', [places.basins[i]])),
    make('lost', 'lost', [places.lost]),
  ];
}
