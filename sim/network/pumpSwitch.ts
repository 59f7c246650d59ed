/**
 * What decides whether the pump is driven: the command given, the power, and a level switch that has tripped.
 */
export class PumpSwitch {
  readonly cutOut: { readonly below: number; readonly restart: number } | undefined;
  private commanded: number;
  private powered = true;
  private tripped = false;

  constructor(speed: number, cutOut: { readonly below: number; readonly restart: number } | undefined) {
    this.commanded = speed;
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
    this.commanded = to === 'on' ? 1 : to === 'off' ? 0 : to;
  }

  power(on: boolean): void {
    this.powered = on;
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
