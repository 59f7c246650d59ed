import { expect, test } from 'vitest';
import { addressOf, namedBy } from '../../web/keep/address.ts';

test.each([
  ['', { kind: 'nothing' }],
  ['#', { kind: 'nothing' }],
  ['#courtyard', { kind: 'demo', name: 'courtyard' }],
  ['#own=k3', { kind: 'own', id: 'k3' }],
  ['#s=1.d.x.y', { kind: 'link', hash: '#s=1.d.x.y' }],
])('the address %s names %o', (hash, named) => {
  expect(namedBy(hash)).toEqual(named);
  expect(addressOf(namedBy(hash))).toBe(hash || '#');
});
