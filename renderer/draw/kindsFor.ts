import { KINDS } from "../../core/parts/catalogue.ts";
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
  const words = typed.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const fitting = KINDS.filter((kind) => {
    const known = [kind.title, kind.name, ...kind.words].join(" ").toLowerCase();
    return !CLIPPED_ON.includes(kind.name) && words.every((word) => known.includes(word));
  });
  return (Object.keys(TITLES) as Kind["role"][]).flatMap((role) => {
    const kinds = fitting.filter((kind) => kind.role === role);
    return kinds.length > 0 ? [{ title: TITLES[role], kinds }] : [];
  });
}
