import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LazyMap, placesOf } from "../../core/base/lazyMap.ts";

/** A lazy map of some keys and a plain one with the same entries, and the places that were asked for. */
function both(keys: readonly string[]) {
  const asked: number[] = [];
  const make = (place: number) => {
    asked.push(place);
    return { place };
  };
  const places = placesOf(keys);
  const plain = new Map([...places].map(([key, place]) => [key, { place }] as const));
  return { lazy: new LazyMap(places, make), plain, asked };
}

const someKeys = fc.uniqueArray(fc.string(), { maxLength: 12 });

describe("a map whose values are made when they are read", () => {
  it("reads as a plain one in every way there is", () => {
    fc.assert(
      fc.property(someKeys, fc.string(), (keys, other) => {
        const { lazy, plain } = both(keys);
        const told: unknown[] = [];
        lazy.forEach((value, key) => void told.push([key, value]));
        expect(told).toEqual([...plain]);
        for (const key of [...keys, other]) {
          expect(lazy.get(key)).toEqual(plain.get(key));
          expect(lazy.has(key)).toBe(plain.has(key));
        }
        expect(lazy.size).toBe(plain.size);
        expect([...lazy]).toEqual([...plain]);
        expect([...lazy.entries()]).toEqual([...plain]);
        expect([...lazy.keys()]).toEqual([...plain.keys()]);
        expect([...lazy.values()]).toEqual([...plain.values()]);
      }),
    );
  });

  it("makes each value once, when it is first read, and gives the same one ever after", () => {
    const { lazy, asked } = both(["a", "b", "c"]);
    expect(asked).toEqual([]);
    const first = lazy.get("b");
    expect([lazy.get("b"), [...lazy.values()][1]].every((value) => value === first)).toBe(true);
    expect(asked).toEqual([1, 0, 2]);
  });

  it("is like another where their entries are alike, read or not", () => {
    const [one, other] = [both(["a", "b"]), both(["a", "b"])];
    one.lazy.get("a");
    expect(one.lazy).toEqual(other.lazy);
    expect(one.lazy).not.toEqual(both(["b", "a"]).lazy);
  });
});
