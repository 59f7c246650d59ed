/** The page's side of the worker, against lines whose worker answers or dies as the test says. */
import { describe, expect, test } from 'vitest';
import { Engine } from '../../web/engine/client.ts';
import type { Line } from '../../web/engine/line.ts';
import type { Fault, Question } from '../../web/engine/protocol.ts';

interface Fake extends Line {
  asked: Question[];
  reply(message: string): void;
  die(): void;
  hungUp: boolean;
}

function fakeLine(): Fake {
  const waiting: ((outcome: Fault) => void)[] = [];
  let reject: (why: Error) => void = () => {};
  const broken = new Promise<never>((_, refuse) => {
    reject = refuse;
  });
  broken.catch(() => {});
  const line: Fake = {
    asked: [],
    hungUp: false,
    broken,
    answering: {
      hello: async () => true,
      ask(question) {
        line.asked.push(question);
        return new Promise((resolve) => waiting.push(resolve));
      },
    },
    reply: (message) => waiting.shift()!({ kind: 'fault', message }),
    die: () => reject(new Error('the worker ended')),
    hangUp() {
      line.hungUp = true;
      reject(new Error('hung up'));
    },
  };
  return line;
}

function engineWithLines(): { engine: Engine; lines: Fake[] } {
  const lines: Fake[] = [];
  const engine = new Engine(async () => {
    const line = fakeLine();
    lines.push(line);
    return line;
  });
  return { engine, lines };
}

const question = (text: string): Question => ({ text, display: undefined });
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

describe('the engine', () => {
  test('keeps one worker for questions that follow each other', async () => {
    const { engine, lines } = engineWithLines();
    for (const text of ['one', 'two']) {
      const answer = engine.ask(question(text));
      await settled();
      lines[0]!.reply(text);
      expect(await answer).toEqual({ kind: 'fault', message: text });
    }
    expect(lines.length).toBe(1);
  });

  test('lets only the latest question answer, and drops the worker that was at the earlier one', async () => {
    const { engine, lines } = engineWithLines();
    const earlier = engine.ask(question('earlier'));
    await settled();
    const latest = engine.ask(question('latest'));
    await settled();
    expect(lines[0]!.hungUp).toBe(true);
    lines[1]!.reply('of the latest');
    expect(await earlier).toBe('superseded');
    expect(await latest).toEqual({ kind: 'fault', message: 'of the latest' });
    expect(lines[1]!.asked).toEqual([question('latest')]);
  });

  test('answers only the last of three questions asked at one moment', async () => {
    const { engine, lines } = engineWithLines();
    const answers = ['one', 'two', 'three'].map((text) => engine.ask(question(text)));
    await settled();
    lines[lines.length - 1]!.reply('three');
    expect(await Promise.all(answers)).toEqual(['superseded', 'superseded', { kind: 'fault', message: 'three' }]);
  });

  test('asks again when the worker dies at a question', async () => {
    const { engine, lines } = engineWithLines();
    const answer = engine.ask(question('again'));
    await settled();
    lines[0]!.die();
    await settled();
    expect(lines[1]!.asked).toEqual([question('again')]);
    lines[1]!.reply('at last');
    expect(await answer).toEqual({ kind: 'fault', message: 'at last' });
  });

  test('gives up after two workers died at one question, and starts afresh at the next', async () => {
    const { engine, lines } = engineWithLines();
    const answer = engine.ask(question('deadly'));
    await settled();
    lines[0]!.die();
    await settled();
    lines[1]!.die();
    expect(await answer).toMatchObject({ kind: 'fault', message: expect.stringContaining('the worker ended') });
    const next = engine.ask(question('harmless'));
    await settled();
    lines[2]!.reply('fine');
    expect(await next).toEqual({ kind: 'fault', message: 'fine' });
  });

  test('replaces a worker that died between two questions', async () => {
    const { engine, lines } = engineWithLines();
    const first = engine.ask(question('first'));
    await settled();
    lines[0]!.reply('first');
    await first;
    lines[0]!.die();
    await settled();
    const second = engine.ask(question('second'));
    await settled();
    lines[1]!.reply('second');
    expect(await second).toEqual({ kind: 'fault', message: 'second' });
  });

  test('tells as a fault that no worker can be started', async () => {
    const engine = new Engine(() => Promise.reject(new Error('no such file')));
    expect(await engine.ask(question('any'))).toMatchObject({
      kind: 'fault',
      message: expect.stringContaining('no such file'),
    });
  });
});
