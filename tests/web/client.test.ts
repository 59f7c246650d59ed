/** The page's side of the worker, against lines whose worker answers or dies as the test says. */
import { describe, expect, test } from 'vitest';
import { Engine } from '../../web/engine/client.ts';
import type { Line } from '../../web/engine/line.ts';
import type { Fault, Question, Request } from '../../web/engine/protocol.ts';

interface Fake extends Line {
  asked: (Question | Request)[];
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
      give(request) {
        line.asked.push(request);
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

/** `longest`: how long a worker may be at one question while another waits, ms. */
function engineWithLines(longest?: number): { engine: Engine; lines: Fake[] } {
  const lines: Fake[] = [];
  const engine = new Engine(async () => {
    const line = fakeLine();
    lines.push(line);
    return line;
  }, longest);
  return { engine, lines };
}

const question = (text: string): Question => ({ text, display: undefined, depth: 'quick', about: 'stop' });
const fault = (message: string): Fault => ({ kind: 'fault', message });
const schema: Request = { want: 'schema' };
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

  test('lets the question in hand finish, and of those asked meanwhile puts only the last', async () => {
    const { engine, lines } = engineWithLines();
    const answers = ['one', 'two', 'three'].map((text) => engine.ask(question(text)));
    await settled();
    expect(lines[0]!.asked).toEqual([question('one')]);
    lines[0]!.reply('of one');
    await settled();
    expect(lines[0]!.asked).toEqual([question('one'), question('three')]);
    lines[0]!.reply('of three');
    expect(await Promise.all(answers)).toEqual([fault('of one'), 'superseded', fault('of three')]);
    expect(lines.length).toBe(1);
  });

  test('gives a worker up that is at one question for too long while another waits', async () => {
    const { engine, lines } = engineWithLines(20);
    const earlier = engine.ask(question('long'));
    await settled();
    const latest = engine.ask(question('latest'));
    expect(await earlier).toBe('superseded');
    await settled();
    expect(lines[0]!.hungUp).toBe(true);
    expect(lines[1]!.asked).toEqual([question('latest')]);
    lines[1]!.reply('of the latest');
    expect(await latest).toEqual(fault('of the latest'));
  });

  test('leaves a worker alone that takes long while nothing waits', async () => {
    const { engine, lines } = engineWithLines(5);
    const answer = engine.ask(question('long'));
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(lines[0]!.hungUp).toBe(false);
    lines[0]!.reply('at last');
    expect(await answer).toEqual(fault('at last'));
  });

  test('puts a request when no question is open, and drops it at the next one', async () => {
    const { engine, lines } = engineWithLines();
    const first = engine.ask(question('first'));
    const given = engine.give(schema);
    await settled();
    expect(lines[0]!.asked).toEqual([question('first')]);
    lines[0]!.reply('of first');
    await first;
    await settled();
    expect(lines[0]!.asked).toEqual([question('first'), schema]);
    const waiting = engine.give(schema);
    const second = engine.ask(question('second'));
    expect(await waiting).toBe('superseded');
    lines[0]!.reply('the schema');
    expect(await given).toEqual(fault('the schema'));
    await settled();
    lines[0]!.reply('of second');
    expect(await second).toEqual(fault('of second'));
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
