import { guessFlow, type Pipe } from '../laws/pipe.ts';
import { RootTracker, solveRising } from '../solver/roots.ts';
import { PipeEquation } from './mainLine.ts';
import type { MediaEquation } from './media.ts';

/** A feed's flow and its slopes by the levels in the riser, at its own end and at the other feed's end, m³/s and m²/s. */
export interface FeedFlow {
  flow: number;
  byRiser: number;
  byBottom: number;
  byTop: number;
}

/** The bottom feed's flow, what of it goes through the media and round them, and the head across them, m. */
export interface BottomFlow extends FeedFlow {
  head: number;
  media: number;
  gap: number;
  /** Slopes of what goes up through the media, by the riser's level and that of the filter, m²/s. */
  mediaByRiser: number;
  mediaByBottom: number;
}

/** Head below which a feed's flow is linear in it, m, as for any hole: what nears rest comes to rest. */
const LINEAR_DRIVE = 0.001;

/** Depth share of a pipe's mouth that is drowned, 0..1, and its slope by the level. */
function drowned(level: number, mouth: number, diameter: number, out: Float64Array): void {
  const share = (level - mouth) / diameter;
  out[0] = Math.min(1, Math.max(0, share));
  out[1] = share > 0 && share < 1 ? 1 / diameter : 0;
}

const other = new Float64Array(2);
const own = new Float64Array(2);

/** The level that holds water back at the tee: the tee can't pull below its own elevation while air gets in. */
function pullAtTee(riser: number, tee: number, airtight: Float64Array): number {
  return (1 - airtight[0]) * Math.max(riser, tee) + airtight[0] * riser;
}

/**
 * The two feeds from the tee: bottom feed under the filter's media, top feed to an open outlet.
 *
 * Each runs forward by the level at the tee (the riser's) and backward where its end stands higher: the bottom feed
 * drains the filter down to its inlet, the top feed siphons only while its outlet is drowned.
 */
export class FeedFlows {
  readonly bottom: BottomFlow;
  readonly top: FeedFlow;

  readonly tee: number;
  readonly bottomPipe: Pipe | undefined;
  readonly inlet: number;
  readonly topPipe: Pipe | undefined;
  readonly outlet: number;
  private readonly media: MediaEquation | undefined;
  private readonly bare: PipeEquation | undefined;
  private readonly topEquation: PipeEquation | undefined;
  private readonly bottomRoot = new RootTracker(true);
  private readonly topRoot = new RootTracker(true);

  constructor(
    tee: number,
    bottomPipe: Pipe | undefined,
    inlet: number,
    topPipe: Pipe | undefined,
    outlet: number,
    media: MediaEquation | undefined,
  ) {
    this.tee = tee;
    this.bottomPipe = bottomPipe;
    this.inlet = inlet;
    this.topPipe = topPipe;
    this.outlet = outlet;
    this.media = media;
    this.bare = bottomPipe && !media ? new PipeEquation(bottomPipe) : undefined;
    this.topEquation = topPipe ? new PipeEquation(topPipe) : undefined;
    this.bottom = {
      flow: 0,
      byRiser: 0,
      byBottom: 0,
      byTop: 0,
      head: 0,
      media: 0,
      gap: 0,
      mediaByRiser: 0,
      mediaByBottom: 0,
    };
    this.top = { flow: 0, byRiser: 0, byBottom: 0, byTop: 0 };
  }

  /** No feed takes water: none is there, or their valves are shut. */
  get shut(): boolean {
    return !isOpen(this.bottomPipe) && !isOpen(this.topPipe);
  }

  get hasMedia(): boolean {
    return this.media !== undefined;
  }

  /** Head at which the media lift, m; Infinity without media. */
  get liftHead(): number {
    return this.media ? this.media.bed.liftHead : Number.POSITIVE_INFINITY;
  }

  /**
   * Sets both flows for three levels, m.
   *
   * @param riser level at the tee
   * @param atBottom level of the basin in which the bottom feed ends
   * @param atTop level at the top feed's outlet
   */
  at(riser: number, atBottom: number, atTop: number): void {
    clear(this.bottom);
    clear(this.top);
    this.bottom.head = 0;
    this.bottom.media = 0;
    this.bottom.gap = 0;
    this.bottom.mediaByRiser = 0;
    this.bottom.mediaByBottom = 0;
    const bottomOpen = isOpen(this.bottomPipe);
    const topOpen = isOpen(this.topPipe);
    if (bottomOpen) this.throughBottom(riser, atBottom, atTop, topOpen);
    if (topOpen) this.throughTop(riser, atBottom, atTop, bottomOpen);
  }

  private throughBottom(riser: number, atBottom: number, atTop: number, topOpen: boolean): void {
    const { tee, inlet, bottom } = this;
    const drive = Math.max(riser, tee) - Math.max(atBottom, inlet, tee);
    if (drive > 0) {
      this.solveBottom(drive, atBottom, true);
      const byDrive = bottom.byRiser;
      const holdsBack = atBottom > Math.max(inlet, tee);
      bottom.byBottom -= holdsBack ? byDrive : 0;
      bottom.byRiser = riser > tee ? byDrive : 0;
      this.slopesOfMedia(drive, riser > tee, holdsBack);
      return;
    }
    drowned(atBottom, inlet, (this.bottomPipe as Pipe).diameter, own);
    if (own[0] === 0) return;
    if (topOpen) drowned(atTop, this.outlet, (this.topPipe as Pipe).diameter, other);
    else fullyDrowned(other);
    const back = atBottom - pullAtTee(riser, tee, other);
    if (back <= 0) return;
    this.solveBottom(back, atBottom, false);
    const byDrive = bottom.byRiser;
    const byWetting = bottom.byBottom;
    const flow = bottom.flow;
    bottom.flow = -own[0] * flow;
    bottom.byRiser = own[0] * byDrive * (riser > tee ? 1 : other[0]);
    bottom.byBottom = -own[0] * (byDrive + byWetting) - own[1] * flow;
    bottom.byTop = -own[0] * byDrive * other[1] * (Math.max(riser, tee) - riser);
    bottom.media *= -own[0];
    bottom.gap *= -own[0];
    bottom.head = -bottom.head;
  }

  /** Flow at a drive > 0; leaves the slope by the drive in `byRiser` and that by the wetted height in `byBottom`. */
  private solveBottom(drive: number, atBottom: number, upward: boolean): void {
    const { bottom, media } = this;
    if (media === undefined) {
      bottom.byRiser = this.solvePipe(this.bare as PipeEquation, this.bottomRoot, drive, bottom);
      return;
    }
    const least = Math.max(drive, LINEAR_DRIVE);
    const share = drive / least;
    media.drive = least;
    media.upward = upward;
    media.wetTo(atBottom);
    const u = solveRising(media, this.bottomRoot.guess(least, guessFlow(media.pipe, least, 0) / media.bed.area));
    this.bottomRoot.keep(u, least, 1 / media.slope);
    // The equation stands where it was last asked, one Newton step short of the root: carry its parts that step.
    const step = u - media.throughMedia / media.bed.area;
    bottom.media = share * media.bed.area * u;
    bottom.gap = share * (media.throughGap + (media.flowByU - media.bed.area) * step);
    bottom.flow = bottom.media + bottom.gap;
    bottom.head = share * (media.head + media.headByU * step);
    bottom.byRiser = share < 1 ? bottom.flow / drive : media.byDrive();
    bottom.byBottom = share * media.byWetting();
  }

  private slopesOfMedia(drive: number, pushed: boolean, heldBack: boolean): void {
    const { media, bottom } = this;
    if (media === undefined) return;
    const byDrive = drive < LINEAR_DRIVE ? bottom.media / drive : media.mediaByDrive();
    const share = Math.min(1, drive / LINEAR_DRIVE);
    bottom.mediaByRiser = pushed ? byDrive : 0;
    bottom.mediaByBottom = share * media.mediaByWetting() - (heldBack ? byDrive : 0);
  }

  private throughTop(riser: number, atBottom: number, atTop: number, bottomOpen: boolean): void {
    const { tee, outlet, top } = this;
    const stands = Math.max(outlet, tee);
    const drive = riser - Math.max(atTop, stands);
    if (drive > 0) {
      const byDrive = this.solveTop(drive);
      top.byRiser = byDrive;
      top.byTop = atTop > stands ? -byDrive : 0;
      return;
    }
    drowned(atTop, outlet, (this.topPipe as Pipe).diameter, own);
    if (own[0] === 0) return;
    if (bottomOpen) drowned(atBottom, this.inlet, (this.bottomPipe as Pipe).diameter, other);
    else fullyDrowned(other);
    const back = atTop - pullAtTee(riser, tee, other);
    if (back <= 0) return;
    const byDrive = this.solveTop(back);
    const flow = top.flow;
    top.flow = -own[0] * flow;
    top.byRiser = own[0] * byDrive * (riser > tee ? 1 : other[0]);
    top.byTop = -own[0] * byDrive - own[1] * flow;
    top.byBottom = -own[0] * byDrive * other[1] * (Math.max(riser, tee) - riser);
  }

  private solveTop(drive: number): number {
    return this.solvePipe(this.topEquation as PipeEquation, this.topRoot, drive, this.top);
  }

  /** Sets the flow of a bare pipe at a drive > 0; returns its slope by the drive. */
  private solvePipe(equation: PipeEquation, root: RootTracker, drive: number, feed: FeedFlow): number {
    const least = Math.max(drive, LINEAR_DRIVE);
    equation.drive = least;
    const solved = solveRising(equation, root.guess(least, guessFlow(equation.pipe, least, 0)));
    root.keep(solved, least, 1 / equation.slope);
    feed.flow = (solved * drive) / least;
    return drive < least ? solved / least : 1 / equation.slope;
  }
}

function isOpen(pipe: Pipe | undefined): boolean {
  return pipe !== undefined && Number.isFinite(pipe.k);
}

function clear(f: FeedFlow): void {
  f.flow = 0;
  f.byRiser = 0;
  f.byBottom = 0;
  f.byTop = 0;
}

function fullyDrowned(out: Float64Array): void {
  out[0] = 1;
  out[1] = 0;
}
