import type { Circuit } from "../../../core/circuit/circuit.ts";
import { wordsOf, wordsTyped } from "../words.ts";

/** Where in a text's words PostgreSQL stops counting. */
const LAST_POSITION = 16_383;
/** Longest word of an index in characters; four bytes each stay under what a word may have. */
const LONGEST = 500;

type Weight = "A" | "B" | "D";

/** A text cut into what is searched by: letters and digits, small, without accents. */
export function tokensOf(text: string): readonly string[] {
  const plain = text
    .normalize("NFD")
    .replace(/\p{Mn}+/gu, "")
    .toLowerCase();
  return (plain.match(/[\p{L}\p{N}\p{Co}]+/gu) ?? []).map((token) => token.slice(0, LONGEST));
}

/** What a circuit is found by, as the text of a `tsvector`: its title counts most, then its vehicle, then every word in it. */
export function circuitIndex(circuit: Circuit): string {
  return indexOf([
    [circuit.title, "A"],
    [circuit.vehicle ?? "", "B"],
    [wordsOf(circuit), "D"],
  ]);
}

/** The text of a `tsvector` of some texts, each with its weight. Words that follow each other stand at places that do. */
export function indexOf(texts: readonly (readonly [text: string, weight: Weight])[]): string {
  const places = new Map<string, string[]>();
  let place = 0;
  for (const [text, weight] of texts) {
    for (const token of tokensOf(text)) {
      place = Math.min(place + 1, LAST_POSITION);
      const known = places.get(token);
      const at = `${place}${weight}`;
      if (known) known.push(at);
      else places.set(token, [at]);
    }
    // A gap, so that no two words of different texts count as one after the other.
    place = Math.min(place + 1, LAST_POSITION);
  }
  return [...places].map(([token, at]) => `'${token}':${at.slice(0, 255).join(",")}`).join(" ");
}

/**
 * What a person typed as the text of a `tsquery`: every word must be found as the beginning of one, in any order; a word of
 * several parts, as `M-XY`, as those one after the other. With weights only there. Null where it holds no word at all.
 */
export function queryOf(typed: string, weights = ""): string | null {
  const words = wordsTyped(typed)
    .map(tokensOf)
    .filter((tokens) => tokens.length > 0)
    .map((tokens) => {
      const parts = tokens.map((token, index) => `'${token}':${index === tokens.length - 1 ? "*" : ""}${weights}`);
      return `(${parts.map((part) => part.replace(/:$/, "")).join(" <-> ")})`;
    });
  return words.length === 0 ? null : words.join(" & ");
}
