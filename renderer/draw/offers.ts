import { ASSEMBLY_WORDS } from "../../core/base/words/edit.ts";
import { ASSEMBLY_IDS, type AssemblyId, assembly } from "../../core/edit/assemblies.ts";
import { KINDS, kindOf } from "../../core/parts/catalogue.ts";
import type { Kind } from "../../core/parts/kind.ts";

/** Kinds under one heading. */
export interface KindGroup {
  readonly title: string;
  readonly kinds: readonly Kind[];
}

const TITLES: Readonly<Record<Kind["role"], string>> = {
  source: "Supply",
  protection: "Protection",
  control: "Switches and relays",
  load: "Loads",
  electronics: "Electronics",
  join: "Joins and grounds",
};
/** Things that a technician clips on; they are put in by the meter, not drawn. */
const CLIPPED_ON: readonly string[] = ["jumper", "meter-leads", "stand-in-load"];

/** The kinds that match every word typed, by heading; all of them for an empty text. */
export function kindsFor(typed: string): readonly KindGroup[] {
  const fitting = KINDS.filter((kind) => !CLIPPED_ON.includes(kind.name) && fits(typed, wordsOf(kind)));
  return (Object.keys(TITLES) as Kind["role"][]).flatMap((role) => {
    const kinds = fitting.filter((kind) => kind.role === role);
    return kinds.length > 0 ? [{ title: TITLES[role], kinds }] : [];
  });
}

/** The ready assemblies that match every word typed: by their titles, or by the parts that they are made of. */
export function assembliesFor(typed: string): readonly AssemblyId[] {
  return ASSEMBLY_IDS.filter((id) => {
    const kinds = assembly(id, ANY_VOLTS).parts.flatMap(({ kind }) => kindOf(kind) ?? []);
    return fits(typed, [ASSEMBLY_WORDS[id], "ready assembly", ...kinds.flatMap(wordsOf)]);
  });
}

/** An assembly is made of the same parts at any volts. */
const ANY_VOLTS = 12;

function wordsOf({ title, name, words }: Kind): readonly string[] {
  return [title, name, ...words];
}

function fits(typed: string, known: readonly string[]): boolean {
  const text = known.join(" ").toLowerCase();
  return typed
    .trim()
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
