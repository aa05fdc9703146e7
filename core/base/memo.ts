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
