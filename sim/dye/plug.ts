/** A parcel of water in the gap with the dye that it carries. */
interface Parcel {
  volume: number;
  mass: number;
}

/**
 * Plug flow as parcels that move one behind the other, from the lower end up or back: nothing mixes, so a pulse keeps
 * its width however fine or coarse the steps are. A parcel that leaves in part leaves its dye in the same part.
 */
export class Plug {
  /** From the lower end up. */
  private readonly parcels: Parcel[] = [];
  private filled = 0;

  /** @param volume of clear water in it, m³ */
  constructor(volume: number) {
    this.put(volume, 0, 'low');
  }

  /** Water in it, m³. */
  get volume(): number {
    return this.filled;
  }

  /** Dye in it, kg. */
  get mass(): number {
    return this.parcels.reduce((sum, { mass }) => sum + mass, 0);
  }

  /** Adds a parcel at an end, m³ and kg. */
  put(volume: number, mass: number, end: 'low' | 'high'): void {
    if (volume <= 0 && mass <= 0) return;
    const parcel = { volume: Math.max(0, volume), mass };
    if (end === 'low') this.parcels.unshift(parcel);
    else this.parcels.push(parcel);
    this.filled += parcel.volume;
  }

  /** Takes water out at an end, no more than there is, m³; returns it with its dye. */
  take(volume: number, end: 'low' | 'high'): Parcel {
    const taken = { volume: 0, mass: 0 };
    const { parcels } = this;
    while (parcels.length > 0 && taken.volume < volume) {
      const i = end === 'low' ? 0 : parcels.length - 1;
      const parcel = parcels[i];
      const left = volume - taken.volume;
      if (parcel.volume <= left) {
        parcels.splice(i, 1);
        taken.volume += parcel.volume;
        taken.mass += parcel.mass;
        continue;
      }
      const mass = (parcel.mass * left) / parcel.volume;
      parcel.volume -= left;
      parcel.mass -= mass;
      taken.volume += left;
      taken.mass += mass;
    }
    this.filled = parcels.length === 0 ? 0 : Math.max(0, this.filled - taken.volume);
    return taken;
  }

  /** Dye in equal cells from the lower end up, kg, added from a place of an array on. */
  spread(cells: number, out: Float64Array, at: number): void {
    const size = this.parcels.reduce((sum, { volume }) => sum + volume, 0) / cells;
    const cellOf = (place: number): number => (size > 0 ? Math.min(cells - 1, Math.floor(place / size)) : 0);
    let below = 0;
    for (const { volume, mass } of this.parcels) {
      const above = below + volume;
      const last = cellOf(above);
      let left = mass;
      for (let k = cellOf(below); k < last; k++) {
        const inside = Math.min(left, (mass * ((k + 1) * size - Math.max(below, k * size))) / volume);
        out[at + k] += inside;
        left -= inside;
      }
      out[at + last] += left;
      below = above;
    }
  }
}
