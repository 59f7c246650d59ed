/**
 * What decides whether the pump is driven: the command given, the power, and a level switch that has tripped.
 */
export class PumpSwitch {
  readonly cutOut: { readonly below: number; readonly restart: number } | undefined;
  private readonly ownSpeed: number;
  private commanded: number;
  /** Time up to which the power is cut; the longest cut of those that overlap counts. */
  private darkUntil = Number.NEGATIVE_INFINITY;
  private powered = true;
  private tripped = false;

  /**
   * @param speed at t = 0, −
   * @param ownSpeed while it is on, −
   * @param cutOut level switch in force
   */
  constructor(speed: number, ownSpeed: number, cutOut: PumpSwitch['cutOut']) {
    this.commanded = speed;
    this.ownSpeed = ownSpeed;
    this.cutOut = cutOut;
  }

  /** Speed the pump is driven to now, −. */
  get target(): number {
    return this.powered && !this.tripped ? this.commanded : 0;
  }

  get driven(): boolean {
    return this.target > 0;
  }

  command(to: 'on' | 'off' | number): void {
    this.commanded = to === 'on' ? this.ownSpeed : to === 'off' ? 0 : to;
  }

  /** Cuts the power up to a time, s; Infinity until it is put on again. */
  cutPower(until: number): void {
    this.powered = false;
    this.darkUntil = Math.max(this.darkUntil, until);
  }

  restorePower(): void {
    this.powered = true;
    this.darkUntil = Number.NEGATIVE_INFINITY;
  }

  /** Whether a cut ends at a time: not where it was restored before, nor while a longer one lasts. */
  endsDark(t: number): boolean {
    return !this.powered && t >= this.darkUntil;
  }

  trip(): void {
    this.tripped = true;
  }

  /** Takes the trip back; true where the pump starts again by it. */
  release(): boolean {
    const was = this.tripped;
    this.tripped = false;
    return was && this.driven;
  }
}
