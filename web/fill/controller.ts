import { html, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { FillPlan } from '../../sim/fill/plan.ts';
import type { Engine } from '../engine/client.ts';
import type { FillDay } from '../engine/fill-asked.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Session } from '../state/session.ts';
import type { Stage } from '../views/stage.ts';
import type { FillMoment, SiteEdited } from './fill.ts';

/** The day a site is filled on, the plan for it, and what is typed beside it put into the file. */
export class FillController {
  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #stage: Stage;
  #day: FillDay = {};

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine, stage: Stage) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
    this.#stage = stage;
  }

  /** The plan for the day, of the site as it stands; undefined where there is none. */
  async planned(): Promise<FillPlan | undefined> {
    const { text, display } = this.#session;
    const given = await this.#engine.give({ want: 'fill', text, display, day: this.#day, part: 'plan' });
    return given !== 'superseded' && given.kind === 'fill plan' ? (given.plan ?? undefined) : undefined;
  }

  view({ scenario }: Answered): TemplateResult {
    // What shows a fill is fetched when it is first asked about.
    void import('./fill.ts');
    const { doc, text } = this.#session;
    return html`<tb-fill .scenario=${scenario} .file=${doc?.now.file} .text=${text} .display=${scenario.display}
      .engine=${this.#engine} .day=${this.#day} .moment=${this.#stage.fillMoment}
      @site-edited=${({ detail: { edits, label } }: CustomEvent<SiteEdited>) => this.#session.put(edits, label)}
      @fill-day=${(event: CustomEvent<FillDay>) => {
        this.#day = event.detail;
        this.#host.requestUpdate();
      }}
      @fill-played=${(event: CustomEvent<FillDay>) => void this.#stage.playFill(event.detail)}
      @fill-moment=${({ detail: { t, day } }: CustomEvent<FillMoment>) => void this.#stage.fillAt(t, day)}></tb-fill>`;
  }
}
