import { holeFlow } from '../laws/orifice.ts';
import { guessFlow, type Pipe, pipeLoss } from '../laws/pipe.ts';
import { type PowerCurve, type PumpCurve, pumpHead, wirePower } from '../laws/pump.ts';
import { type RisingEquation, RootTracker, solveRising } from '../solver/roots.ts';

/** What stands in the main against water running back: a sound valve, none, or a leak of an effective area, m². */
export type CheckState = { readonly kind: 'sound' | 'none' } | { readonly kind: 'leaking'; readonly area: number };

/** Head below which the flow through a standing pump is no longer turbulence's, m. */
const NEAR_REST = 0.001;
/** Height over which the flow into closed pipework fades, m. */
const LAST_ROOM = 0.01;

const head = new Float64Array(3);
const loss = new Float64Array(2);
const pair = new Float64Array(2);

/** Loss of the main plus the rise it must lift less what the pump gives, rising with the flow. */
class MainEquation implements RisingEquation {
  value = 0;
  slope = 0;
  rise = 0;
  private readonly line: MainLineFlow;

  constructor(line: MainLineFlow) {
    this.line = line;
  }

  at(flow: number): void {
    const { pipe, curve, speed, standing } = this.line;
    pumpHead(curve, flow, speed, standing, head);
    pipeLoss(pipe, flow, 0, loss);
    this.value = loss[0] + this.rise - head[0];
    this.slope = loss[1] - head[1];
  }
}

/** Loss of a pipe with an extra coefficient less the head that drives it. */
export class PipeEquation implements RisingEquation {
  value = 0;
  slope = 0;
  drive = 0;
  readonly extra: number;
  readonly pipe: Pipe;

  constructor(pipe: Pipe, extra = 0) {
    this.pipe = pipe;
    this.extra = extra;
  }

  at(flow: number): void {
    pipeLoss(this.pipe, flow, this.extra, loss);
    this.value = loss[0] - this.drive;
    this.slope = loss[1];
  }
}

/**
 * Pump, check valve and main line from the vault to the tee: the flow between two levels, with all its slopes.
 *
 * Below the minimum submergence the pump draws air and gives less, linearly down to its suction. Water runs back
 * through the standing (or slowing) pump where the check valve lets it.
 */
export class MainLineFlow {
  speed = 0;
  check: CheckState = { kind: 'sound' };
  flow = 0;
  byVault = 0;
  byRiser = 0;
  bySpeed = 0;
  /** Wire power W, with its slopes. */
  power = 0;
  powerByVault = 0;
  powerByRiser = 0;
  powerBySpeed = 0;

  readonly pipe: Pipe;
  readonly curve: PumpCurve;
  /** Standing pump's K V²/2g per flow², s²/m⁵. */
  readonly standing: number;
  readonly suction: number;
  readonly minimum: number;
  private readonly watts: PowerCurve | undefined;
  private readonly density: number;
  private readonly forward = new MainEquation(this);
  private readonly standingPump: PipeEquation;
  private readonly shutOff: number;
  private readonly forwardRoot = new RootTracker();
  private readonly standingRoot = new RootTracker(true);
  private standingSlope = 0;
  private readonly midFlow: number;

  constructor(
    pipe: Pipe,
    curve: PumpCurve,
    standingLoss: number,
    suction: number,
    minimum: number,
    watts: PowerCurve | undefined,
    density: number,
  ) {
    this.pipe = pipe;
    this.curve = curve;
    this.standing = standingLoss * pipe.head;
    this.suction = suction;
    this.minimum = minimum;
    this.watts = watts;
    this.density = density;
    this.standingPump = new PipeEquation(pipe, standingLoss);
    this.shutOff = curve.head[0];
    this.midFlow = curve.flow[curve.flow.length - 1] / 2;
  }

  /**
   * Sets the flow and its slopes for levels in the vault and at the tee, m.
   *
   * @param closedAt level at which the pipework is full where both feeds are shut, m: what is in it can go nowhere then,
   *   and nothing runs back for want of air. Infinity where a feed is open.
   */
  at(vault: number, riser: number, closedAt: number): void {
    const pressure = this.speed * this.speed * this.shutOff;
    const rise = riser - vault;
    this.flow = 0;
    this.byVault = 0;
    this.byRiser = 0;
    this.bySpeed = 0;
    if (rise < pressure) this.driveForward(vault, rise, closedAt - riser);
    else {
      this.setPower(0, 0, 0, 0);
      if (closedAt === Number.POSITIVE_INFINITY)
        this.runBack(riser - Math.max(vault, this.suction) - pressure, vault > this.suction);
    }
  }

  /** @param room height left in closed pipework, m; Infinity where it is open */
  private driveForward(vault: number, rise: number, room: number): void {
    this.solveForward(rise);
    if (room < LAST_ROOM) this.fillUp(room);
    this.setPower(this.flow, this.byVault, this.byRiser, this.bySpeed);
    const span = this.minimum - this.suction;
    const share = Math.min(1, Math.max(0, (vault - this.suction) / span));
    const shareByVault = share > 0 && share < 1 ? 1 / span : 0;
    this.byVault = this.byVault * share + this.flow * shareByVault;
    this.flow *= share;
    this.byRiser *= share;
    this.bySpeed *= share;
  }

  /** Flow where pump and main meet, at a rise below what the pump holds. */
  private solveForward(rise: number): void {
    if (this.speed > 0) {
      const { forward } = this;
      forward.rise = rise;
      this.flow = solveRising(forward, this.forwardRoot.guess(rise, this.midFlow));
      this.byRiser = -1 / forward.slope;
      this.bySpeed = head[2] / forward.slope;
      this.forwardRoot.keep(this.flow, rise, this.byRiser);
    } else {
      this.flow = this.throughStanding(-rise);
      this.byRiser = -this.standingSlope;
    }
    this.byVault = -this.byRiser;
  }

  /**
   * Flow through main and standing pump under a head, m³/s; leaves its slope in `standingSlope`. Within a millimeter of
   * rest it is a straight line, as for any hole (see `holeFlow`), or, where a check valve shuts behind it, a cubic that
   * starts from nothing without a kink.
   */
  private throughStanding(drive: number): number {
    const { standingPump } = this;
    standingPump.drive = Math.max(drive, NEAR_REST);
    const fresh = guessFlow(this.pipe, standingPump.drive, standingPump.extra);
    const solved = solveRising(standingPump, this.standingRoot.guess(standingPump.drive, fresh));
    this.standingRoot.keep(solved, standingPump.drive, 1 / standingPump.slope);
    if (drive >= NEAR_REST) {
      this.standingSlope = 1 / standingPump.slope;
      return solved;
    }
    const x = drive / NEAR_REST;
    if (this.check.kind === 'none') {
      this.standingSlope = solved / NEAR_REST;
      return solved * x;
    }
    const end = NEAR_REST / (standingPump.slope * solved);
    this.standingSlope = (solved / NEAR_REST) * x * (2 * (3 - end) + 3 * (end - 2) * x);
    return solved * x * x * (3 - end + (end - 2) * x);
  }

  /** Fades the flow out as closed pipework fills, over the last of its height and without a kink where it is full. */
  private fillUp(room: number): void {
    const left = Math.max(0, room / LAST_ROOM);
    const share = left * left;
    this.byRiser = this.byRiser * share - (2 * left * this.flow) / LAST_ROOM;
    this.byVault *= share;
    this.bySpeed *= share;
    this.flow *= share;
  }

  private runBack(drive: number, wetSuction: boolean): void {
    const { check } = this;
    if (drive <= 0 || check.kind === 'sound') return;
    let flow: number;
    let byDrive: number;
    if (check.kind === 'leaking') {
      holeFlow(check.area, drive, pair);
      [flow, byDrive] = pair;
    } else {
      flow = this.throughStanding(drive);
      byDrive = this.standingSlope;
    }
    this.flow = -flow;
    this.byRiser = -byDrive;
    this.byVault = wetSuction ? byDrive : 0;
    this.bySpeed = 2 * this.speed * this.shutOff * byDrive;
  }

  /** Power from the solved flow, before starving: a pump that draws air is not trusted to draw less current. */
  private setPower(flow: number, flowByVault: number, flowByRiser: number, flowBySpeed: number): void {
    this.power = 0;
    this.powerByVault = 0;
    this.powerByRiser = 0;
    this.powerBySpeed = 0;
    if (this.watts === undefined || this.speed <= 0) return;
    if (this.watts.efficiency > 0) pumpHead(this.curve, flow, this.speed, this.standing, head);
    wirePower(this.watts, flow, this.speed, head, this.density, power);
    this.power = power[0];
    this.powerByVault = power[1] * flowByVault;
    this.powerByRiser = power[1] * flowByRiser;
    this.powerBySpeed = power[2] + power[1] * flowBySpeed;
  }
}

const power = new Float64Array(3);
