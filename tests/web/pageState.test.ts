import { describe, expect, test } from 'vitest';
import { Player } from '../../web/state/player.ts';
import { firstStop, stoppingAt, windowOf } from '../../web/state/stopping.ts';

const range = (t: number) => ({ start: 0, end: 0, min: { t: 0, value: 0 }, max: { t, value: 1 } });

describe('the stop that is played', () => {
  test('is the first of the log, by command, power cut or level switch', () => {
    const events = ['hose on', 'power off', 'pump off'].map((what, t) => ({ t, what }));
    expect(firstStop(events)).toBe(1);
    expect(firstStop([{ t: 5, what: 'storm' }])).toBeUndefined();
  });

  test('begins a minute before, and ends at the highest level within two to twelve minutes', () => {
    expect(stoppingAt(600, range(900), 1e5)).toEqual({ at: 600, from: 540, to: 900, highest: 900 });
    expect(stoppingAt(600, range(610), 1e5)).toMatchObject({ to: 720, highest: 610 });
    expect(stoppingAt(600, range(9000), 1e5)).toMatchObject({ to: 1320, highest: 9000 });
    expect(stoppingAt(0, range(100), 50)).toMatchObject({ from: 0, to: 50, highest: 50 });
  });

  test('is opened from a minute before to twelve after, within the run', () => {
    expect(windowOf(stoppingAt(600, undefined, 1e5), 1e5)).toEqual([540, 1320]);
    expect(windowOf(stoppingAt(10, undefined, 300), 300)).toEqual([0, 300]);
  });
});

function clock(still = false) {
  let now = 0;
  let next: (() => void) | undefined;
  return {
    advance(ms: number) {
      now += ms;
      const step = next;
      next = undefined;
      step?.();
    },
    now: () => now,
    frame: (step: () => void) => {
      next = step;
      return 1;
    },
    cancel: () => {
      next = undefined;
    },
    still: () => still,
  };
}

describe('the player', () => {
  test('goes from the one moment to the other, slowly at first, and stops there', () => {
    const seen: number[] = [];
    const hand = clock();
    const player = new Player((t) => seen.push(t), hand);
    player.play(100, 200, 1000);
    for (const ms of [500, 300, 400, 400]) hand.advance(ms);
    expect(seen).toEqual([100, 125, 164, 200]);
    expect(player.running).toBe(false);
  });

  test('stands while the page is in the dark, and goes on from there', () => {
    const seen: number[] = [];
    const hand = clock();
    const player = new Player((t) => seen.push(t), hand);
    player.play(100, 200, 1000);
    hand.advance(500);
    hand.advance(86_400_000);
    expect(seen[2]! - seen[1]!).toBeLessThan(2);
    expect(player.running).toBe(true);
    for (const ms of [400, 400]) hand.advance(ms);
    expect(seen.at(-1)).toBe(200);
  });

  test('stands at once where motion is unwelcome', () => {
    const seen: number[] = [];
    new Player((t) => seen.push(t), clock(true)).play(100, 200, 1000, 170);
    expect(seen).toEqual([170]);
  });

  test('stops at a word', () => {
    const seen: number[] = [];
    const hand = clock();
    const player = new Player((t) => seen.push(t), hand);
    player.play(0, 10, 1000);
    player.stop();
    hand.advance(500);
    expect(seen).toEqual([0]);
  });
});
