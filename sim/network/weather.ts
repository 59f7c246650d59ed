import { type RainStretch, stormStretches } from '../laws/rain.ts';
import type { Weather } from '../scenario/scenario.ts';
import { monthAt } from './clock.ts';

/** Evaporation and rain of a site's months, and the storms that are laid over them. */
export class Sky {
  private readonly storms: { readonly start: number; readonly stretches: readonly RainStretch[] }[] = [];
  private readonly weather: Weather;
  private readonly starts: string;

  constructor(weather: Weather, starts: string) {
    this.weather = weather;
    this.starts = starts;
  }

  get changesByMonth(): boolean {
    return typeof this.weather.evaporation !== 'number' || this.weather.rain !== undefined;
  }

  /** Depth rate from open water at a time, m/s. */
  evaporation(t: number): number {
    const { evaporation } = this.weather;
    return typeof evaporation === 'number' ? evaporation : evaporation[monthAt(this.starts, t)];
  }

  /** Depth rate of rain at a time, m/s, right after a change that falls on it. */
  rain(t: number): number {
    let rate = this.weather.rain?.[monthAt(this.starts, t)] ?? 0;
    // Stretches follow on each other; only their ends are compared, as the times of change are reckoned from them.
    for (const { start, stretches } of this.storms) rate += stretches.find((s) => t < start + s.to)?.rate ?? 0;
    return rate;
  }

  /** Begins a storm; returns the times at which its rate changes, its end last. */
  addStorm(start: number, depth: number, lasting: number, shape: 'even' | 'scs2'): number[] {
    const stretches = stormStretches(depth, lasting, shape);
    this.storms.push({ start, stretches });
    return stretches.map((s) => start + s.to);
  }
}
