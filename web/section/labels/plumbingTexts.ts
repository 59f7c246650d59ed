import { formatPercent } from '../../../sim/quantity/format.ts';
import type { CheckValve } from '../../../sim/scenario/scenario.ts';
import { settingsAt } from '../settings.ts';
import { flowFigure, NO_FLOW } from './figures.ts';
import { type LabelText, labelText, type Subject } from './text.ts';

function checkValveText({ kind }: CheckValve): LabelText {
  const id = 'plumbing.main.checkValve';
  if (kind === 'none') return labelText(id, 'no check valve', '');
  return labelText(id, 'check valve', kind === 'unknown' ? 'taken as sound' : kind);
}

/** Water may run in through a pump that stands, into a line that is empty; a trial without a log is told by its flow. */
function isDriven({ scenario, answer: { events }, moment }: Subject): boolean {
  return events.length === 0 || settingsAt(scenario, events, moment.t).pumpOn;
}

/** The pump's power where it runs and its power is known, else whether it moves water. */
function pumpText(subject: Subject): LabelText {
  const { balance, moment } = subject;
  const running = (moment.flows['main'] ?? 0) > NO_FLOW && isDriven(subject);
  const power = balance?.duty.power ?? 0;
  return labelText('pump', 'pump', running ? (power > 0 ? `${Math.round(power)} W` : 'runs') : 'stands');
}

/** The main line, the tee and its two feeds, the pump and the check valve. */
export function plumbingTexts(subject: Subject): LabelText[] {
  const { scenario, moment, display } = subject;
  const { plumbing } = scenario;
  const flow = (name: string): number => moment.flows[name] ?? 0;
  const texts = [
    pumpText(subject),
    checkValveText(plumbing.main.checkValve),
    labelText('plumbing.main', 'main line', flowFigure(flow('main'), display)),
  ];
  const feed = (id: string, name: string): LabelText => labelText(id, name, flowFigure(flow(name), display));
  if (plumbing.bottomFeed) texts.push(feed('plumbing.bottomFeed', 'bottom feed'));
  if (plumbing.topFeed) texts.push(feed('plumbing.topFeed', 'top feed'));
  if (plumbing.bottomFeed && plumbing.topFeed) {
    const [low, high] = [flow('bottom feed'), flow('top feed')];
    const split = low > NO_FLOW && high >= 0 ? `${formatPercent(low / (low + high))} to the bottom feed` : '';
    texts.push(labelText('plumbing.tee', 'tee', split));
  }
  return texts;
}
