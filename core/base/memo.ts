/**
 * Remembers what `compute` gave for each object, by identity: circuits are values that never change, so the same
 * object always has the same answer. What is forgotten elsewhere is forgotten here.
 */
export function remember<K extends object, V>(compute: (key: K) => V): (key: K) => V {
  const answers = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    const known = answers.get(key);
    if (known) return known.value;
    const value = compute(key);
    answers.set(key, { value });
    return value;
  };
}

/**
 * Keeps the last value under each of a few keys, for what is made from the one before it: the key used longest ago is
 * forgotten for a new one. What is made must be the same without.
 */
export class LastOfEach<V> {
  private readonly values = new Map<string, V>();
  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  get(key: string): V | null {
    return this.values.get(key) ?? null;
  }

  set(key: string, value: V): void {
    this.values.delete(key);
    this.values.set(key, value);
    if (this.values.size > this.most) this.values.delete(this.values.keys().next().value!);
  }
}
