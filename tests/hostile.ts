import type { Circuit } from "../core/circuit/circuit.ts";
import { readCircuit } from "../schemas/circuit.ts";

/** What would run, were it ever read as markup: it leaves a mark on the page that it ran in. */
export const SCRIPTED = `"'><img src=x onerror="window.hit=1"><script>window.hit=1</script><svg onload=window.hit=1>`;
/** Words that turn what is written after them, and what stands before. */
export const TURNED = "\u202eevil\u2066 קצר \u200f";

/** A circuit's file with these words in every place that takes words of a person's own; comes back with how many there are. */
export function withWords(text: string, words: string): { readonly circuit: Circuit; readonly places: number } {
  let json: unknown = JSON.parse(text);
  let places = 0;
  const paths = pathsOf(json);
  for (const path of paths) {
    const tried = replaced(json, path, words);
    // Ids, kinds and figures are none: they are refused.
    if (!readCircuit(JSON.stringify(tried)).ok) continue;
    json = tried;
    places++;
  }
  const read = readCircuit(JSON.stringify(json));
  if (!read.ok) throw new Error(read.refusal.code);
  return { circuit: read.value, places };
}

type Path = readonly string[];

function pathsOf(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value === "string") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => pathsOf(each, [...path, name]));
}

function replaced(value: unknown, [name, ...rest]: Path, words: string): unknown {
  if (name === undefined) return words;
  if (Array.isArray(value)) return value.map((each, at) => (String(at) === name ? replaced(each, rest, words) : each));
  const object = value as Record<string, unknown>;
  return { ...object, [name]: replaced(object[name], rest, words) };
}
