import { html, nothing, type TemplateResult } from 'lit';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { DepositsGiven } from '../engine/filter-asked.ts';
import type { Answered } from '../engine/protocol.ts';
import { Asking } from '../fill/ask.ts';
import type { Case } from '../state/case.ts';
import { momentAt } from '../state/moment.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import { porositiesLeft } from './deposit.ts';
import { FilterInside } from './inside.ts';
import { settledAt } from './settling.ts';
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

  /** @param settled over the present run; that of a case stays with it as it is kept */
  view(
    { scenario }: Answered,
    record: Shown,
    kept: Case | undefined,
    settled: DepositsGiven | undefined,
  ): TemplateResult | typeof nothing {
    if (kept !== this.#kept?.of) this.#kept = kept && { of: kept, settled, inside: new FilterInside() };
    const other = this.#kept;
    if (!this.#open || !other) return nothing;
    const t = this.#around.stage.moment;
    const stop = record.stopping?.at;
    const there = stop !== undefined && other.of.stop !== undefined ? t - stop + other.of.stop : t;
    other.inside.deposits = settledAt(other.settled, there);
    const keptScenario = { ...other.of.scenario, display: scenario.display };
    this.#compare(keptScenario, scenario);
    return html`<tb-sides .cleaner=${this.#cleaner?.says ?? ''} .kept=${sideOf(keptScenario, other.of, there, other.inside)}
      .now=${sideOf(scenario, record, t, this.beside)} .close=${this.#shut}></tb-sides>`;
  }
}

const sideOf = (scenario: Scenario, { series, answer }: Case | Shown, at: number, inside: FilterInside): Side => ({
  seen: { scenario, moment: momentAt(series, at), porosities: porositiesLeft(scenario, inside.deposits) },
  answer,
  inside,
});
