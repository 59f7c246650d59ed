/** A browser's store in memory, which holds no more than so many characters. */
import type { Store } from '../../web/keep/shelf.ts';

export function memoryStore(most = 5_000_000): Store & { held: Map<string, string>; most: number } {
  const held = new Map<string, string>();
  const store = {
    held,
    most,
    get length() {
      return held.size;
    },
    key: (at: number) => [...held.keys()][at] ?? null,
    getItem: (key: string) => held.get(key) ?? null,
    removeItem: (key: string) => void held.delete(key),
    setItem: (key: string, value: string) => {
      const others = [...held].reduce((sum, [name, text]) => sum + (name === key ? 0 : name.length + text.length), 0);
      if (others + key.length + value.length > store.most) throw new DOMException('full', 'QuotaExceededError');
      held.set(key, value);
    },
  };
  return store;
}
