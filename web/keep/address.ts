/** What the address's part from '#' on names. */

export type Named =
  | { readonly kind: 'nothing' }
  /** A demo, if there is one of that name. */
  | { readonly kind: 'demo'; readonly name: string }
  /** A site kept in this browser. */
  | { readonly kind: 'own'; readonly id: string }
  /** A whole case. */
  | { readonly kind: 'link'; readonly hash: string };

const OWN = '#own=';
/** How an address begins that carries a case. */
export const LINK = '#s=';

export function namedBy(hash: string): Named {
  if (hash.startsWith(LINK)) return { kind: 'link', hash };
  if (hash.startsWith(OWN)) return { kind: 'own', id: hash.slice(OWN.length) };
  const name = hash.slice(1);
  return name === '' ? { kind: 'nothing' } : { kind: 'demo', name };
}

export function addressOf(named: Named): string {
  switch (named.kind) {
    case 'nothing':
      return '#';
    case 'demo':
      return `#${named.name}`;
    case 'own':
      return OWN + named.id;
    case 'link':
      return named.hash;
  }
}
