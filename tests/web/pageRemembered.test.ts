import { describe, expect, test } from 'vitest';
import { type Remembered, recall, remember } from '../../web/state/remembered.ts';
import { memoryStore } from './keepStore.ts';

const kept: Remembered = {
  address: '#courtyard',
  about: 'filter',
  display: 'us',
  moment: 21_600.5,
  window: [21_540, 22_320],
  trial: 'drain-back',
};

describe('what is on the screen', () => {
  test('comes back as it was kept', () => {
    const where = memoryStore();
    expect(recall(() => where)).toEqual({ kind: 'nothing' });
    expect(remember(() => where, kept)).toBe(true);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept });
  });

  test('comes back without what was not there to keep', () => {
    const where = memoryStore();
    const { display, trial, ...bare } = kept;
    remember(() => where, bare);
    expect([display, trial].every((each) => each !== undefined)).toBe(true);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept: bare });
  });

  test('as the first version kept it comes back with the site and its edits', () => {
    const where = memoryStore();
    const site = { name: 'mine', opened: '{ "title": "Mine" }', file: { title: 'Edited' } };
    where.setItem('tumblebay page', JSON.stringify({ version: 1, ...kept, ...site }));
    expect(recall(() => where)).toEqual({ kind: 'kept', kept, site });
    const { file, ...unedited } = site;
    expect(file).toBeDefined();
    where.setItem('tumblebay page', JSON.stringify({ version: 1, ...kept, ...unedited }));
    expect(recall(() => where)).toEqual({ kind: 'kept', kept, site: unedited });
  });

  test('is not kept by a full store, which is told, and what it had stays', () => {
    const where = memoryStore(400);
    expect(remember(() => where, kept)).toBe(true);
    expect(remember(() => where, { ...kept, address: 'x'.repeat(500) })).toBe(false);
    expect(recall(() => where)).toEqual({ kind: 'kept', kept });
  });

  test.each([
    ['torn', (text: string) => text.slice(0, -9)],
    ['of another version', (text: string) => text.replace('"version":2', '"version":3')],
    ['of the first version without its site', (text: string) => text.replace('"version":2', '"version":1')],
    ['with another kind of value', (text: string) => text.replace('21600.5', '"noon"')],
    ['that asks what is not asked', (text: string) => text.replace('"filter"', '"toString"')],
    ['that is no object', () => 'null'],
  ])('is handed back as damaged where it is a text %s', (_, damage) => {
    const where = memoryStore();
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
