import { html, type TemplateResult } from 'lit';
import type { Answered } from '../engine/protocol.ts';
import { checkOf, type Headline, headlineOf, inRunWords } from '../state/headline.ts';
import type { Session } from '../state/session.ts';
import './answer.ts';
import { oldWords } from './troubles.ts';
import { verdictWord } from './verdict.ts';
import './whole-answer.ts';

/** The answer to the question asked, and the same for those who hear the page. */
export function answerView(session: Session, run: Answered): TemplateResult {
  const { about, full, isWhole, trouble } = session;
  const headline = headlineOf(about, run, full);
  const check = full?.answer.checks.find(({ name }) => name === checkOf[about]);
  const heard = isWhole ? heardWords(headline) : '';
  return html`<tb-answer .headline=${headline} .old=${trouble && session.isOld ? oldWords(trouble) : ''}></tb-answer>
    <p class="unseen" role="status" aria-live="polite">${heard}</p>
    <tb-whole-answer class=${isWhole || trouble ? '' : 'pending'} .check=${check} .stops=${about === 'stop' ? run.stops : null} .inRun=${about === 'stop' ? inRunWords(run) : ''}
      .starts=${run.scenario.starts} .display=${run.scenario.display}></tb-whole-answer>`;
}

const heardWords = ({ verdict, says }: Headline): string =>
  verdict === 'told' ? says : `${verdictWord[verdict]}: ${says}`;
