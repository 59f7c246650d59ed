import { crestFlow } from '../laws/crest.ts';
import { holeFlow, overflowPipeFlow } from '../laws/orifice.ts';
import { seepageFlow } from '../laws/seepage.ts';
import { locate } from '../laws/storage.ts';
import { streamFlow } from '../laws/stream.ts';
import { evaporationFlow, floatValveFlow } from '../laws/surface.ts';
import type { Linearization, Pattern, StiffSystem } from '../solver/system.ts';
import type { Basin } from './builder.ts';
import type { Circuit } from './circuit.ts';
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
import { type OpenLeak, type Settings, speedAt } from './settings.ts';

/** Everything the assembly hands over; see `assemble.ts`. */
export interface NetworkParts {
  readonly basins: readonly Basin[];
  readonly flowNames: readonly string[];
  readonly crests: readonly CrestLink[];
  readonly seeps: readonly SeepLink[];
  readonly streams: readonly StreamLink[];
  readonly surfaces: readonly SurfaceLink[];
  readonly circuit: Circuit;
  readonly pond: number;
  readonly overflow: (Link & { readonly elevation: number; readonly diameter: number }) | undefined;
  readonly autofill: (Link & { readonly full: number; readonly set: number; readonly low: number }) | undefined;
  readonly draw: Link;
  readonly runoffArea: number;
  readonly leaks: readonly OpenLeak[];
  readonly jacobianPattern: Pattern;
  readonly quadraturePattern: Pattern;
  readonly quadratures: number;
  /** Makes the link of a leak in a basin. */
  readonly leakLink: (basin: number, elevation: number, area: number) => HoleLink;
  readonly setBottomValve: (opening: number) => void;
  readonly setTopValve: (opening: number) => void;
}

/** Depth over which what is pumped out of a pond fades as it runs dry, m. */
const LAST_FILM = 0.001;

/**
 * The site as one pure rate function: volumes in, flows and their slopes out. Basins are states, in the order of
 * `basins`; the ledger's rows are quadratures. What actions change is put in by `apply`, between two restarts.
 */
export class Network implements StiffSystem {
  readonly parts: NetworkParts;
  readonly size: number;
  readonly quadratures: number;
  readonly jacobianPattern: Pattern;
  readonly quadraturePattern: Pattern;
  /** Levels m, slopes of level by volume 1/m², and flows m³/s at the state asked last. */
  readonly level: Float64Array;
  readonly byVolume: Float64Array;
  readonly flow: Float64Array;
  /** Head across the media at the state asked last, m; negative where water runs down. */
  mediaHead = 0;
  /** Flows, then the head across the media, where the last linearization was: the start of a step. */
  readonly atStart: Float64Array;

  private settings!: Settings;
  private leaks: HoleLink[] = [];
  private readonly area: Float64Array;
  private readonly growth: Float64Array;
  private readonly inflow: Float64Array;
  private readonly given: Float64Array;
  private readonly pondRow: number[] = [];
  private readonly out = new Float64Array(3);
  private f: Float64Array;
  private g: Float64Array;
  private lin: Linearization | undefined;

  constructor(parts: NetworkParts) {
    this.parts = parts;
    const n = parts.basins.length;
    this.size = n;
    this.quadratures = parts.quadratures;
    this.jacobianPattern = parts.jacobianPattern;
    this.quadraturePattern = parts.quadraturePattern;
    this.level = new Float64Array(n);
    this.byVolume = new Float64Array(n);
    this.area = new Float64Array(n);
    this.growth = new Float64Array(n);
    this.flow = new Float64Array(parts.flowNames.length);
    this.atStart = new Float64Array(parts.flowNames.length + 1);
    this.inflow = new Float64Array(n);
    this.given = new Float64Array(parts.quadratures);
    this.f = new Float64Array(n);
    this.g = new Float64Array(parts.quadratures);
    const { rows } = parts.jacobianPattern;
    for (let e = 0; e < rows.length; e++) if (rows[e] === parts.pond) this.pondRow.push(e);
  }

  /** Puts settings in force; the next rates are by them. */
  apply(settings: Settings): void {
    const { parts } = this;
    this.settings = settings;
    parts.setBottomValve(settings.bottomValve);
    parts.setTopValve(settings.topValve);
    parts.circuit.main.check = settings.check;
    for (const c of parts.crests) c.open = settings.open[c.name] ?? 1;
    for (const s of parts.streams) s.open = settings.open[s.name] ?? 1;
    this.leaks = settings.leaks.map((l) => parts.leakLink(l.basin, l.elevation, l.area));
    this.setGivenFlows();
  }

  private setGivenFlows(): void {
    const { parts, settings, inflow, given } = this;
    inflow.fill(0);
    given.fill(0);
    for (let i = 0; i < inflow.length; i++) {
      inflow[i] = settings.rain * parts.basins[i].catchment;
      given[LEDGER.rain] += inflow[i];
    }
    given[LEDGER.runoff] = settings.rain * parts.runoffArea;
    given[LEDGER.hose] = settings.hose;
    inflow[parts.pond] += given[LEDGER.runoff] + settings.hose;
  }

  rates(t: number, y: Float64Array, f: Float64Array, g: Float64Array): void {
    this.lin = undefined;
    this.evaluate(t, y, f, g);
  }

  linearize(t: number, y: Float64Array, into: Linearization): void {
    this.lin = into;
    into.jacobian.fill(0);
    into.gradient.fill(0);
    this.evaluate(t, y, into.f, into.g);
    this.atStart.set(this.flow);
    this.atStart[this.flow.length] = this.mediaHead;
    this.addTimeSlopes(t, into);
    if (this.settings.pondHeld) {
      for (const e of this.pondRow) into.jacobian[e] = 0;
      into.fByTime[this.parts.pond] = 0;
    }
  }

  private evaluate(t: number, y: Float64Array, f: Float64Array, g: Float64Array): void {
    this.f = f;
    this.g = g;
    f.set(this.inflow);
    g.set(this.given);
    this.flow.fill(0);
    this.locateAll(y);
    this.addCrests();
    this.addPlainLinks();
    this.addPondLinks();
    this.addCircuit(t);
    if (this.settings.pondHeld) f[this.parts.pond] = 0;
  }

  private locateAll(y: Float64Array): void {
    const { basins } = this.parts;
    const { out } = this;
    for (let i = 0; i < this.size; i++) {
      locate(basins[i].storage, y[i], out);
      this.level[i] = out[0];
      this.area[i] = out[1];
      this.growth[i] = out[2];
      this.byVolume[i] = 1 / out[1];
    }
  }

  /** Books a flow and its slopes by the levels at its ends on both basins, its ledger row and the splash. */
  private carry(link: Link, q: number, byFrom: number, byTo: number): void {
    const { from, to, row } = link;
    const lost = q > 0 ? link.splash : 0;
    if (link.flow >= 0) this.flow[link.flow] += q;
    if (from >= 0) this.f[from] -= q;
    if (to >= 0) this.f[to] += q * (1 - lost);
    if (row >= 0) this.g[row] += q;
    if (lost > 0) this.g[LEDGER.splash] += q * lost;
    if (this.lin === undefined) return;
    const { jacobian, gradient } = this.lin;
    const arrives = 1 - lost;
    if (from >= 0) {
      const slope = byFrom * this.byVolume[from];
      jacobian[link.ff] -= slope;
      if (to >= 0) jacobian[link.tf] += slope * arrives;
      if (row >= 0) gradient[link.rowByFrom] += slope;
      if (lost > 0) gradient[link.splashByFrom] += slope * lost;
    }
    if (to >= 0) {
      const slope = byTo * this.byVolume[to];
      jacobian[link.tt] += slope * arrives;
      if (from >= 0) jacobian[link.ft] -= slope;
      if (row >= 0) gradient[link.rowByTo] += slope;
      if (lost > 0) gradient[link.splashByTo] += slope * lost;
    }
  }

  /** Level against which a link works at its lower end: where water enters, −Infinity outside. */
  private tail(to: number): number {
    return to >= 0 ? this.level[to] + this.parts.basins[to].entry : Number.NEGATIVE_INFINITY;
  }

  private addCrests(): void {
    const { out, level } = this;
    for (const c of this.parts.crests) {
      const up = level[c.from];
      const down = this.tail(c.to);
      if (up <= c.line.lowest && down <= c.line.lowest) continue;
      crestFlow(c.line, up, down, c.open, out);
      this.carry(c, out[0], out[1], out[2]);
    }
  }

  private addPlainLinks(): void {
    const { parts, out, level, settings } = this;
    for (const s of parts.seeps) {
      // What has seeped into a stream runs off on its bed and cannot go back.
      const down = parts.basins[s.to].entry > 0 ? Number.NEGATIVE_INFINITY : level[s.to];
      seepageFlow(s.k, s.foot, level[s.from], down, out);
      this.carry(s, out[0], out[1], out[2]);
    }
    for (const s of parts.streams) {
      streamFlow(s.conveyance * s.open, level[s.from] - s.foot, out);
      this.carry(s, out[0], out[1], 0);
    }
    for (const h of this.leaks) {
      holeFlow(h.area, level[h.from] - h.elevation, out);
      this.carry(h, out[0], out[1], 0);
    }
    if (settings.evaporation === 0) return;
    for (const s of parts.surfaces) {
      const rate = settings.evaporation * (1 - s.cover);
      evaporationFlow(rate, this.area[s.from], this.growth[s.from], level[s.from] - s.floor, out);
      this.carry(s, out[0], out[1], 0);
    }
  }

  private addPondLinks(): void {
    const { parts, out, level, settings } = this;
    if (parts.overflow) {
      overflowPipeFlow(parts.overflow.diameter, level[parts.pond] - parts.overflow.elevation, out);
      this.carry(parts.overflow, out[0], out[1], 0);
    }
    if (parts.autofill && settings.autofill) {
      const { full, low, set, to } = parts.autofill;
      floatValveFlow(full, low, set, level[to], out);
      this.carry(parts.autofill, out[0], 0, out[1]);
    }
    if (settings.pumpOut > 0) {
      const depth = level[parts.pond] - parts.basins[parts.pond].storage.z[0];
      const share = Math.min(1, Math.max(0, depth / LAST_FILM));
      const slope = share < 1 ? settings.pumpOut / LAST_FILM : 0;
      this.carry(parts.draw, settings.pumpOut * share, slope, 0);
    }
  }

  private addCircuit(t: number): void {
    const c = this.parts.circuit;
    const { level, f, g, flow } = this;
    const { main, feeds } = c;
    main.speed = speedAt(this.settings.ramp, t);
    main.at(level[c.vault], level[c.riser], feeds.shut ? c.fullAt : Number.POSITIVE_INFINITY);
    feeds.at(level[c.riser], level[c.bottom], level[c.top]);
    const { bottom, top } = feeds;
    flow[c.flow.main] = main.flow;
    if (c.flow.bottom >= 0) flow[c.flow.bottom] = bottom.flow;
    if (c.flow.top >= 0) flow[c.flow.top] = top.flow;
    if (c.flow.media >= 0) {
      flow[c.flow.media] = bottom.media;
      flow[c.flow.gap] = bottom.gap;
    }
    this.mediaHead = bottom.head;
    f[c.vault] -= main.flow;
    f[c.riser] += main.flow - bottom.flow - top.flow;
    f[c.bottom] += bottom.flow;
    f[c.top] += top.flow;
    g[LEDGER.pumped] += Math.max(0, main.flow);
    g[LEDGER.energy] += main.power;
    if (this.lin !== undefined) this.addCircuitSlopes(c, this.lin);
  }

  private addCircuitSlopes(c: Circuit, lin: Linearization): void {
    const { main, feeds } = c;
    const { jacobian, gradient } = lin;
    const perVault = this.byVolume[c.vault];
    const perRiser = this.byVolume[c.riser];
    const byVault = main.byVault * perVault;
    const byRiser = main.byRiser * perRiser;
    jacobian[c.mainPlaces[0]] -= byVault;
    jacobian[c.mainPlaces[1]] -= byRiser;
    jacobian[c.mainPlaces[2]] += byVault;
    jacobian[c.mainPlaces[3]] += byRiser;
    if (main.flow > 0) {
      gradient[c.pumpedPlaces[0]] += byVault;
      gradient[c.pumpedPlaces[1]] += byRiser;
    }
    gradient[c.energyPlaces[0]] += main.powerByVault * perVault;
    gradient[c.energyPlaces[1]] += main.powerByRiser * perRiser;
    this.addFeedSlopes(feeds.bottom, c.bottomPlaces, jacobian, c);
    this.addFeedSlopes(feeds.top, c.topPlaces, jacobian, c);
  }

  private addFeedSlopes(
    feed: { byRiser: number; byBottom: number; byTop: number },
    places: Circuit['bottomPlaces'],
    jacobian: Float64Array,
    c: Circuit,
  ): void {
    if (places[0] === NONE) return;
    const byRiser = feed.byRiser * this.byVolume[c.riser];
    const byBottom = feed.byBottom * this.byVolume[c.bottom];
    const byTop = feed.byTop * this.byVolume[c.top];
    jacobian[places[0]] -= byRiser;
    jacobian[places[1]] -= byBottom;
    jacobian[places[2]] -= byTop;
    jacobian[places[3]] += byRiser;
    jacobian[places[4]] += byBottom;
    jacobian[places[5]] += byTop;
  }

  /** Only the ramp of the pump's speed depends on time inside a stretch. */
  private addTimeSlopes(t: number, into: Linearization): void {
    into.fByTime.fill(0);
    into.gByTime.fill(0);
    const { ramp } = this.settings;
    if (t >= ramp.end || t < ramp.start) return;
    const perSecond = (ramp.to - ramp.from) / (ramp.end - ramp.start);
    const { main, vault, riser } = this.parts.circuit;
    const change = main.bySpeed * perSecond;
    into.fByTime[vault] = -change;
    into.fByTime[riser] = change;
    if (main.flow > 0) into.gByTime[LEDGER.pumped] = change;
    into.gByTime[LEDGER.energy] = main.powerBySpeed * perSecond;
  }
}
