import { crestFlow } from '../laws/crest.ts';
import { holeFlow, overflowPipeFlow } from '../laws/orifice.ts';
import { rationalRunoff } from '../laws/rain.ts';
import { seepageFlow } from '../laws/seepage.ts';
import { locate } from '../laws/storage.ts';
import { streamFlow } from '../laws/stream.ts';
import { evaporationFlow, floatValveFlow } from '../laws/surface.ts';
import type { Linearization, Pattern, StiffSystem } from '../solver/system.ts';
import { Book } from './book.ts';
import { bookCircuit } from './circuit.ts';
import { LEDGER } from './ledger.ts';
import type { HoleLink } from './link.ts';
import type { NetworkParts } from './parts.ts';
import { type Settings, speedAt } from './settings.ts';

/** Time over which a difference shows how fast the deposits change the flows, s. */
const CLOG_STEP = 30;
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
  /** Levels m and flows m³/s at the state asked last. */
  readonly level: Float64Array;
  readonly flow: Float64Array;
  /** Head across the media at the state asked last, m; negative where water runs down. */
  mediaHead = 0;
  /** Flows, then the head across the media, where the last linearization was: the start of a step. */
  readonly atStart: Float64Array;

  private settings!: Settings;
  private settling = false;
  private leaks: HoleLink[] = [];
  private readonly book: Book;
  private readonly inflow: Float64Array;
  private readonly given: Float64Array;
  private readonly pondRow: number[] = [];
  private readonly laterF: Float64Array;
  private readonly laterG: Float64Array;
  private readonly out = new Float64Array(3);

  constructor(parts: NetworkParts) {
    this.parts = parts;
    this.size = parts.basins.length;
    this.quadratures = parts.quadratures;
    this.jacobianPattern = parts.jacobianPattern;
    this.quadraturePattern = parts.quadraturePattern;
    this.book = new Book(parts.basins, parts.flowNames.length, parts.quadratures);
    this.level = this.book.level;
    this.flow = this.book.flow;
    this.atStart = new Float64Array(parts.flowNames.length + 1);
    this.inflow = new Float64Array(this.size);
    this.given = new Float64Array(parts.quadratures);
    this.laterF = new Float64Array(this.size);
    this.laterG = new Float64Array(parts.quadratures);
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
    parts.clogging?.lay(settings.settled, settings.settled.since);
    this.settling = settings.settled.perSecond.some((rate) => rate > 0);
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
    given[LEDGER.runoff] = rationalRunoff(settings.rain, parts.runoff.area, parts.runoff.coefficient);
    given[LEDGER.hose] = settings.hose;
    inflow[parts.pond] += given[LEDGER.runoff] + settings.hose;
  }

  rates(t: number, y: Float64Array, f: Float64Array, g: Float64Array): void {
    this.book.slopes = undefined;
    this.evaluate(t, y, f, g);
  }

  linearize(t: number, y: Float64Array, into: Linearization): void {
    this.book.slopes = into;
    into.jacobian.fill(0);
    into.gradient.fill(0);
    this.evaluate(t, y, into.f, into.g);
    this.atStart.set(this.flow);
    this.atStart[this.flow.length] = this.mediaHead;
    this.addTimeSlopes(t, into);
    if (this.settling) this.addClogSlopes(t, y, into);
    if (this.settings.pondHeld) {
      for (const e of this.pondRow) into.jacobian[e] = 0;
      into.fByTime[this.parts.pond] = 0;
    }
  }

  private evaluate(t: number, y: Float64Array, f: Float64Array, g: Float64Array): void {
    const { book, settings, parts } = this;
    book.f = f;
    book.g = g;
    f.set(this.inflow);
    g.set(this.given);
    this.flow.fill(0);
    this.locateAll(y);
    this.addCrests();
    this.addPlainLinks();
    if (settings.evaporation > 0) this.addSurfaces();
    this.addPondLinks();
    if (this.settling) parts.clogging?.lay(settings.settled, t);
    this.mediaHead = bookCircuit(parts.circuit, book, speedAt(settings.ramp, t));
    if (settings.pondHeld) f[parts.pond] = 0;
  }

  private locateAll(y: Float64Array): void {
    const { basins } = this.parts;
    const { out, book } = this;
    for (let i = 0; i < this.size; i++) {
      locate(basins[i].storage, y[i], out);
      book.level[i] = out[0];
      book.area[i] = out[1];
      book.growth[i] = out[2];
      book.byVolume[i] = 1 / out[1];
    }
  }

  private addCrests(): void {
    const { out, level, book } = this;
    for (const c of this.parts.crests) {
      const up = level[c.link.from];
      const down = book.tail(c.link.to);
      if (up <= c.line.lowest && down <= c.line.lowest) continue;
      crestFlow(c.line, up, down, c.open, out);
      book.carry(c.link, out[0], out[1], out[2]);
    }
  }

  private addPlainLinks(): void {
    const { parts, out, level, book } = this;
    for (const s of parts.seeps) {
      // What has seeped into a stream runs off on its bed and cannot go back.
      const down = parts.basins[s.link.to].entry > 0 ? Number.NEGATIVE_INFINITY : level[s.link.to];
      seepageFlow(s.k, s.foot, level[s.link.from], down, out);
      book.carry(s.link, out[0], out[1], out[2]);
    }
    for (const s of parts.streams) {
      streamFlow(s.conveyance * s.open, level[s.link.from] - s.foot, out);
      book.carry(s.link, out[0], out[1], 0);
    }
    for (const h of this.leaks) {
      holeFlow(h.area, level[h.link.from] - h.elevation, out);
      book.carry(h.link, out[0], out[1], 0);
    }
  }

  private addSurfaces(): void {
    const { out, level, book } = this;
    const { evaporation } = this.settings;
    for (const s of this.parts.surfaces) {
      const rate = evaporation * (1 - s.cover);
      evaporationFlow(rate, book.area[s.link.from], book.growth[s.link.from], level[s.link.from] - s.floor, out);
      book.carry(s.link, out[0], out[1], 0);
    }
  }

  private addPondLinks(): void {
    const { parts, out, level, settings, book } = this;
    if (parts.overflow) {
      overflowPipeFlow(parts.overflow.diameter, level[parts.pond] - parts.overflow.elevation, out);
      book.carry(parts.overflow.link, out[0], out[1], 0);
    }
    if (parts.autofill && settings.autofill) {
      const { full, low, set, link } = parts.autofill;
      floatValveFlow(full, low, set, level[link.to], out);
      book.carry(parts.autofill.link, out[0], 0, out[1]);
    }
    if (settings.pumpOut > 0) {
      const depth = level[parts.pond] - parts.basins[parts.pond].storage.z[0];
      const share = Math.min(1, Math.max(0, depth / LAST_FILM));
      const slope = share < 1 ? settings.pumpOut / LAST_FILM : 0;
      book.carry(parts.draw, settings.pumpOut * share, slope, 0);
    }
  }

  /** Slopes by time of what the deposits hold back, by a difference: without them a step is good to first order only. */
  private addClogSlopes(t: number, y: Float64Array, into: Linearization): void {
    const { laterF, laterG } = this;
    if (t < this.settings.ramp.end) return;
    this.book.slopes = undefined;
    this.evaluate(t + CLOG_STEP, y, laterF, laterG);
    for (let k = 0; k < laterF.length; k++) into.fByTime[k] += (laterF[k] - into.f[k]) / CLOG_STEP;
    for (let r = 0; r < laterG.length; r++) into.gByTime[r] += (laterG[r] - into.g[r]) / CLOG_STEP;
  }

  /** Inside a stretch only the ramp of the pump's speed depends on time, and the deposits, in hours. */
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
