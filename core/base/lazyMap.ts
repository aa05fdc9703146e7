/**
 * A map whose values are made when they are first read, each once. Its keys have places in a list that many such maps may
 * share; `make` is told the place, and must give the same whenever it is asked. Nothing but its entries can be seen of it, so
 * that two are alike where these are.
 */
export class LazyMap<K, V extends object> implements ReadonlyMap<K, V> {
  readonly #places: ReadonlyMap<K, number>;
  readonly #make: (place: number) => V;
  readonly #made: (V | undefined)[];

  constructor(places: ReadonlyMap<K, number>, make: (place: number) => V) {
    this.#places = places;
    this.#make = make;
    this.#made = new Array(places.size);
  }

  get size(): number {
    return this.#places.size;
  }

  has(key: K): boolean {
    return this.#places.has(key);
  }

  get(key: K): V | undefined {
    const place = this.#places.get(key);
    return place === undefined ? undefined : this.#at(place);
  }

  #at(place: number): V {
    const made = this.#made[place] ?? this.#make(place);
    this.#made[place] = made;
    return made;
  }

  keys(): MapIterator<K> {
    return this.#places.keys();
  }

  *values(): MapIterator<V> {
    for (const place of this.#places.values()) yield this.#at(place);
  }

  *entries(): MapIterator<[K, V]> {
    for (const [key, place] of this.#places) yield [key, this.#at(place)];
  }

  [Symbol.iterator](): MapIterator<[K, V]> {
    return this.entries();
  }

  forEach(tell: (value: V, key: K, map: ReadonlyMap<K, V>) => void): void {
    for (const [key, value] of this) tell(value, key, this);
  }
}

/** The places of some keys in the order in which they come. */
export function placesOf<K>(keys: Iterable<K>): ReadonlyMap<K, number> {
  const places = new Map<K, number>();
  for (const key of keys) places.set(key, places.size);
  return places;
}
