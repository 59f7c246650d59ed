import seedrandom from 'seedrandom';
import { expect, test } from 'vitest';
import { randomStream } from '../../sim/random.ts';

test('an unnamed stream begins with the figures that the generator’s author prints', () => {
  // seedrandom's own documentation: seed 'hello.'.
  const next = randomStream('hello.');
  expect([next(), next()]).toEqual([0.9282578795792454, 0.3752569768646784]);
});

test('a named stream begins with these figures for good', () => {
  const next = randomStream('a year', 'wet days');
  expect([next(), next(), next()]).toEqual([0.736513879538154, 0.020081170586460896, 0.31696059898876017]);
});

test('streams of one seed do not depend on what others have drawn', () => {
  const [days, depths] = [randomStream('a year', 'wet days'), randomStream('a year', 'depths')];
  const mixed = [days(), depths(), days()];
  const alone = randomStream('a year', 'wet days');
  expect([mixed[0], mixed[2]]).toEqual([alone(), alone()]);
  expect(mixed[0]).not.toBe(mixed[1]);
});

test('the engine’s own generator is left alone', () => {
  const before = Math.random;
  randomStream('a year')();
  expect(Math.random).toBe(before);
  expect(seedrandom('a')()).toBe(seedrandom('a')());
});
