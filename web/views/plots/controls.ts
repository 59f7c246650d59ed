import { html, nothing, type TemplateResult } from 'lit';
import { formatClock, formatDuration } from '../../../sim/quantity/index.ts';
import { SPEEDS, type Speed, speedWords } from '../../plots/pass.ts';
import type { Line } from '../../plots/subjects.ts';
import { type Choice, isDrawn } from '../../plots/task.ts';
import type { Window } from '../../plots/time-axis.ts';
import { endMoved } from '../../plots/zoom.ts';
import { lengths, windowRound } from '../moment.ts';

export interface ControlDeeds {
  readonly run: () => void;
  readonly minuteOn: () => void;
  readonly open: (window: Window) => void;
  readonly pace: (speed: Speed) => void;
  readonly choose: (choice: Choice) => void;
}

export interface Controlled {
  readonly running: boolean;
  readonly speed: Speed;
  /** The playhead stands at the end of the run. */
  readonly over: boolean;
  readonly window: Window;
  readonly span: number;
  readonly starts: string;
  readonly choice: Choice;
}

/** Letting time run, one minute on, how fast, and how levels are told; what the page has to add stands among them. */
export function controlsView(now: Controlled, deeds: ControlDeeds): TemplateResult {
  const { running, speed, over, window, choice } = now;
  const [words, by] =
    choice.by === 'depth' ? (['as elevations', 'elevation'] as const) : (['below the edge', 'depth'] as const);
  return html`<div class="controls" role="group" aria-label="Time and levels">
    <slot></slot>
    <button @click=${deeds.run}>${running ? 'let it stand' : 'let it run'}</button>
    <button ?disabled=${over} @click=${deeds.minuteOn}>one minute on</button>
    <select aria-label="speed, in the opened minutes"
      @change=${(event: Event) => deeds.pace((event.target as HTMLSelectElement).value as Speed)}>
      ${(Object.keys(SPEEDS) as Speed[]).map(
        (each) =>
          html`<option value=${each} ?selected=${each === speed}>${each}, ${speedWords(window[1] - window[0], each)}</option>`,
      )}
    </select>
    <button class="by" @click=${() => deeds.choose({ ...choice, by })}>${words}</button>
  </div>`;
}

/** What opens other minutes, in words. */
export function windowWords([from, to]: Window, span: number): string {
  const length = to - from;
  return length < span ? `other minutes than these ${formatDuration(Math.round(length))}` : 'open some minutes';
}

/** Other minutes by two rulers and by presses. */
export function windowView(
  { window, span, starts }: Pick<Controlled, 'window' | 'span' | 'starts'>,
  moment: number,
  deeds: ControlDeeds,
): TemplateResult {
  const end = (which: 'from' | 'to', words: string): TemplateResult => {
    const t = which === 'from' ? window[0] : window[1];
    const move = (event: Event): void =>
      deeds.open(endMoved(window, which, Number((event.target as HTMLInputElement).value), span));
    return html`<label><span>${words}</span>
      <input type="range" min="0" max=${span} step=${span > 3 * 86_400 ? 600 : 30} .value=${String(t)}
        aria-valuetext=${formatClock(starts, t)} @input=${move} /><output>${formatClock(starts, t)}</output></label>`;
  };
  const length = window[1] - window[0];
  const press = (words: string, [from, to]: Window): TemplateResult =>
    html`<button aria-pressed=${Math.abs(to - from - length) < 1} @click=${() => deeds.open([from, to])}>${words}</button>`;
  const shorter = Object.entries(lengths).filter(([, each]) => each < span);
  return html`<div class="ends">${end('from', 'opened from')}${end('to', 'opened to')}</div>
    <div class="presses">
      ${shorter.map(([words, each]) => press(words, windowRound(moment, span, each)))} ${press('the whole run', [0, span])}
    </div>
    <p class="note">A stretch drawn over the lowest bar opens it, too, and so do a pinch or Ctrl and the wheel over the plots.</p>`;
}

/** Which columns are drawn, and which comes first. */
export function linesView(
  levels: readonly Line[],
  flows: readonly Line[],
  still: readonly string[],
  choice: Choice,
  deeds: ControlDeeds,
): TemplateResult {
  const group = (lines: readonly Line[], measure: 'level' | 'flow'): TemplateResult => {
    const first = lines.find(({ key }) => key === choice.first[measure]) ?? lines[0];
    return html`<div class="presses" role="group" aria-label="${measure}s drawn">
      <label>${measure}s: first
        <select aria-label="first of the ${measure}s" @change=${(event: Event) =>
          deeds.choose({
            ...choice,
            first: { ...choice.first, [measure]: (event.target as HTMLSelectElement).value },
          })}>
          ${lines.map((line) => html`<option value=${line.key} ?selected=${line === first}>${line.name}</option>`)}
        </select></label>
      ${lines.filter((line) => line !== first).map((line) => toggle(line, choice, deeds))}
    </div>`;
  };
  return html`${group(levels, 'level')} ${group(flows, 'flow')}
    ${still.length > 0 ? html`<p class="note">Nothing flowed: ${still.join(', ')}.</p>` : nothing}`;
}

function toggle(line: Line, choice: Choice, deeds: ControlDeeds): TemplateResult {
  const turn = (): void => {
    const turned = new Set(choice.turned);
    if (!turned.delete(line.key)) turned.add(line.key);
    deeds.choose({ ...choice, turned });
  };
  return html`<button aria-pressed=${isDrawn(line, choice)} @click=${turn}>${line.name}</button>`;
}
