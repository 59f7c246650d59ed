import { describe, expect, test } from 'vitest';
import { type Remembered, recall, remember } from '../../web/state/remembered.ts';

const kept: Remembered = {
  address: '#courtyard',
  name: 'courtyard',
  opened: '{ "title": "Courtyard" }',
  file: { title: 'Mine' },
  about: 'filter',
  display: 'us',
  moment: 21_600.5,
  window: [21_540, 22_320],
  trial: 'drain-back',
};

function store(most = 5_000_000) {
  const held = new Map<string, string>();
  return {
    held,
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => {
      if (value.length > most) throw new DOMException('full', 'QuotaExceededError');
      held.set(key, value);
    },
  };
}

describe('what is on the screen', () => {
  test('comes back as it was kept', () => {
    const where = store();
    expect(recall(() => where)).toEqual({ kind: 'nothing' });
    expect(remember(() => where, kept)).toBe(true);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept });
  });

  test('comes back without what was not there to keep', () => {
    const where = store();
    const { file, display, trial, ...bare } = kept;
    remember(() => where, bare);
    expect([file, display, trial].every((each) => each !== undefined)).toBe(true);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept: bare });
  });

  test('is not kept by a full store, which is told, and what it had stays', () => {
    const where = store(400);
    expect(remember(() => where, kept)).toBe(true);
    expect(remember(() => where, { ...kept, opened: 'x'.repeat(500) })).toBe(false);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept });
  });

  test.each([
    ['torn', (text: string) => text.slice(0, -9)],
    ['of another version', (text: string) => text.replace('"version":1', '"version":2')],
    ['with another kind of value', (text: string) => text.replace('21600.5', '"noon"')],
    ['that asks what is not asked', (text: string) => text.replace('"filter"', '"toString"')],
    ['that is no object', () => 'null'],
  ])('is handed back as damaged where it is a text %s', (_, damage) => {
    const where = store();
    remember(() => where, kept);
    const [[key, text]] = [...where.held] as [[string, string]];
    const damaged = damage(text);
    expect(damaged).not.toBe(text);
    where.held.set(key, damaged);
    expect(recall(() => where)).toEqual({ kind: 'damaged', text: damaged });
  });

  test('is nothing where the browser gives no store at all', () => {
    const none = (): Storage => {
      throw new DOMException('denied', 'SecurityError');
    };
    expect(recall(none)).toEqual({ kind: 'nothing' });
    expect(remember(none, kept)).toBe(false);
  });
});
