/**
 * A wrong entry by a person: a code for programs and tests, the things concerned for the sentence.
 * `core/base/words.ts` turns it into one plain sentence.
 */
export interface Refusal {
  readonly code: string;
  /** What the sentence names: ids, values, limits. */
  readonly about: Readonly<Record<string, string | number>>;
}

/** Either a value or a refusal; never both, never an exception for a wrong entry. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: Refusal };

/** An outcome that holds a value. */
export function ok<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

/** An outcome that refuses, with a code and the things concerned. */
export function refuse(code: string, about: Refusal["about"] = {}): { readonly ok: false; readonly refusal: Refusal } {
  return { ok: false, refusal: { code, about } };
}

/** Throws when an invariant of the program itself is broken; never for a wrong entry by a person. */
export function assert(condition: unknown, invariant: string): asserts condition {
  if (!condition) throw new Error(`broken invariant: ${invariant}`);
}
