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

/**
 * The kinds that match every word typed, by heading; all of them for an empty text. What is called so comes before what is
 * only known by that word too, so that Enter takes a horn for "horn" and not the button that sounds it.
 */
export function kindsFor(typed: string): readonly KindGroup[] {
  const fitting = KINDS.filter((kind) => !CLIPPED_ON.includes(kind.name) && fits(typed, wordsOf(kind)));
  const groups = (Object.keys(TITLES) as Kind["role"][]).flatMap((role) => {
    const kinds = nearestFirst(
      fitting.filter((kind) => kind.role === role),
      (kind) => farFrom(typed, kind),
    );
    return kinds.length > 0 ? [{ title: TITLES[role], kinds }] : [];
  });
  return nearestFirst(groups, ({ kinds }) => farFrom(typed, kinds[0]!));
}

/** How far a kind is from being called what was typed: 0 just so, 1 its title begins so, 2 a word of its title does, 3 not. */
function farFrom(typed: string, { title }: Kind): number {
  const [wanted, called] = [typed.trim().toLowerCase(), title.toLowerCase()];
  if (wanted === "" || called === wanted) return 0;
  if (called.startsWith(wanted)) return 1;
  return called.split(/[\s-]+/).some((word) => word.startsWith(wanted)) ? 2 : 3;
}

/** The nearest before the others, those equally far as they were. */
function nearestFirst<T>(all: readonly T[], far: (each: T) => number): readonly T[] {
  return all.toSorted((one, other) => far(one) - far(other));
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
