/** What is edited and what came of it, against an engine that answers as the test says. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { withValueAt } from '../../sim/studies/place.ts';
import type { Answered, Outcome, Question } from '../../web/engine/protocol.ts';
import { Session } from '../../web/state/session.ts';

interface Asked {
  question: Question;
  reply(outcome: Outcome | 'superseded'): Promise<void>;
}

const answered = (depth: 'quick' | 'full'): Answered =>
  ({
    kind: 'answered',
    depth,
    scenario: { title: 'Site' },
    answer: {},
    series: {},
    balance: null,
    stops: null,
  }) as unknown as Answered;
const refused: Outcome = { kind: 'refused', problems: [{ place: 'span', found: '0', wanted: 'a time' }] };

function opened(): { session: Session; asked: Asked[] } {
  const asked: Asked[] = [];
  const ask = (question: Question): Promise<Outcome | 'superseded'> =>
    new Promise((resolve) => {
      asked.push({
        question,
        async reply(outcome) {
          resolve(outcome);
          await Promise.resolve().then(() => {});
          await Promise.resolve();
        },
      });
    });
  const session = new Session({ ask }, () => {});
  session.open('site', '{ "span": "1 h", "mark": 0 }');
  return { session, asked };
}

const mark = (session: Session, value: number, gesture?: unknown): void =>
  session.edit(withValueAt(session.doc!.now.file, 'mark', value), 'mark', gesture);

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a session', () => {
  test('asks a site that is opened quickly, then in full', async () => {
    const { session, asked } = opened();
    const quick = answered('quick');
    await asked[0]!.reply(quick);
    expect([session.shown, session.full, session.isWhole, session.isOld]).toEqual([quick, undefined, false, false]);
    expect(asked.map(({ question }) => question.depth)).toEqual(['quick', 'full']);
    const full = answered('full');
    await asked[1]!.reply(full);
    expect([session.shown, session.full, session.isWhole, session.isOld]).toEqual([full, full, true, false]);
  });

  test('asks quickly at each edit and in full when the hand rests', async () => {
    const { session, asked } = opened();
    await asked[0]!.reply(answered('full'));
    for (const value of [1, 2, 3]) mark(session, value, 'drag');
    expect(asked.slice(1).map(({ question }) => question.depth)).toEqual(['quick', 'quick', 'quick']);
    expect(session.isWhole).toBe(false);
    vi.advanceTimersByTime(149);
    expect(asked).toHaveLength(4);
    vi.advanceTimersByTime(1);
    expect(asked[4]!.question).toMatchObject({ depth: 'full', text: '{"span":"1 h","mark":3}' });
  });

  test('never shows an earlier answer over a later one', async () => {
    const { session, asked } = opened();
    await asked[0]!.reply(answered('full'));
    mark(session, 1);
    mark(session, 2);
    const later = answered('quick');
    await asked[2]!.reply(later);
    await asked[1]!.reply(answered('quick'));
    expect(session.shown).toBe(later);
  });

  test('asks a site without an answer once', async () => {
    const { session, asked } = opened();
    await asked[0]!.reply(refused);
    expect([session.trouble, asked.length]).toEqual([refused, 1]);
  });

  test('keeps the last good answer up beside the trouble, and says that it is old', async () => {
    const { session, asked } = opened();
    const good = answered('full');
    await asked[0]!.reply(good);
    mark(session, 1);
    await asked[1]!.reply(refused);
    expect([session.shown, session.trouble, session.isOld]).toEqual([good, refused, true]);
    session.undo();
    await asked.at(-1)!.reply(answered('quick'));
    expect([session.trouble, session.isOld]).toEqual([undefined, false]);
  });

  test('forgets an answer that comes after another site was opened', async () => {
    const { session, asked } = opened();
    session.open('other', '{ "span": "2 h" }');
    await asked[0]!.reply(answered('full'));
    expect(session.shown).toBeUndefined();
  });

  test('puts a text that is no JSON to the reader as it is', () => {
    const { session, asked } = opened();
    session.open('torn', '{ "title": ');
    expect(asked[1]!.question.text).toBe('{ "title": ');
    expect(session.doc).toBeUndefined();
  });
});
