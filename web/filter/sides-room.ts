import { html, nothing, type TemplateResult } from 'lit';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { DepositsGiven } from '../engine/filter-asked.ts';
import type { Answered } from '../engine/protocol.ts';
import { Asking } from '../fill/ask.ts';
import type { Case } from '../state/case.ts';
import { momentAt } from '../state/moment.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import { porositiesIn } from './deposit.ts';
import type { DyePour } from './dye-pour.ts';
import { FilterInside } from './inside.ts';
import { keptLater } from './kept-time.ts';
import { sinceStart, startOf } from './settling.ts';
import type { Side } from './sides.ts';

/** The case kept and the present one side by side, once they are opened. */
export class SidesRoom {
  /** The present case, drawn beside the one kept: each drawing moves marks of its own. */
  readonly beside = new FilterInside();
  readonly #around: Around;
  readonly #comparing: Asking;
  #kept: { of: Case; settled: DepositsGiven | undefined; inside: FilterInside } | undefined;
  #open = false;
  /** Which of the two cases keeps the pond cleaner, and of which two that is told. */
  #cleaner: { readonly kept: Scenario; readonly now: Scenario; says: string } | undefined;

  constructor(around: Around) {
    this.#around = around;
    this.#comparing = new Asking(around.host);
  }

  open(): void {
    void import('./sides.ts');
    this.#open = true;
    this.#around.host.requestUpdate();
  }

  readonly #shut = (): void => {
    this.#open = false;
    this.#around.host.requestUpdate();
  };

  #compare(kept: Scenario, now: Scenario): void {
    const { session, engine } = this.#around;
    if (!session.isWhole || now === this.#cleaner?.now) return;
    const asked = { kept, now, says: '' };
    this.#cleaner = asked;
    void this.#comparing.ask(engine, [{ want: 'cleaner', sites: [kept, now] }], (given) => {
      if (given.kind === 'cleaner') asked.says = given.says;
    });
  }

  /** What has settled over the run of a case stays with it as it is kept. */
  #follow(settled: DepositsGiven | undefined): void {
    const kept = this.#around.kept();
    if (kept !== this.#kept?.of) this.#kept = kept && { of: kept, settled, inside: new FilterInside() };
  }

  /**
   * The case kept, as long before or after its stop as the moment drawn; undefined without one.
   *
   * @param settled over the present run
   */
  keptSide({ scenario: { display } }: Answered, record: Shown, settled: DepositsGiven | undefined): Side | undefined {
    this.#follow(settled);
    const other = this.#kept;
    if (!other) return undefined;
    const t = this.#around.stage.moment;
    const there = t + keptLater(record, other.of);
    other.inside.deposits = sinceStart(startOf(other.of.scenario), other.settled, there);
    return sideOf({ ...other.of.scenario, display }, other.of, there, other.inside);
  }

  view(
    run: Answered,
    record: Shown,
    settled: DepositsGiven | undefined,
    dye: DyePour,
  ): TemplateResult | typeof nothing {
    this.#follow(settled);
    const kept = this.#open ? this.keptSide(run, record, settled) : undefined;
    if (!kept) return nothing;
    // Dye is poured in runs: neither of both may be a trial.
    const isRun = record.trial === undefined && this.#kept?.of.lost !== undefined;
    kept.inside.watch = isRun ? dye.keptWatch : undefined;
    this.beside.watch = isRun ? dye.watch : undefined;
    this.#compare(kept.seen.scenario, run.scenario);
    return html`<tb-sides .cleaner=${this.#cleaner?.says ?? ''} .kept=${kept}
      .now=${sideOf(run.scenario, record, this.#around.stage.moment, this.beside)}
      .dye=${isRun ? dye.shown : undefined} .close=${this.#shut}></tb-sides>`;
  }
}

const sideOf = (scenario: Scenario, { series, answer }: Case | Shown, at: number, inside: FilterInside): Side => ({
  seen: { scenario, moment: momentAt(series, at), porosities: porositiesIn(scenario, inside.deposits) },
  answer,
  inside,
});
