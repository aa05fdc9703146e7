import { capital } from "../../core/base/capital.ts";
import type { VersionRow } from "../../schemas/calls.ts";

/** When a version was kept, by the clock of this place: "12 March 2026, 14:05". */
export function savedWords({ saved }: Pick<VersionRow, "saved">): string {
  const then = new Date(saved);
  const day = then.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  return `${day}, ${then.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
}

/** The edit that brings a version back, as it stands after "Undo". */
export function backWords(row: Pick<VersionRow, "saved">): string {
  return `bring back the version of ${savedWords(row)}`;
}

/** The edit that made a version, as the line of a list: "Move relay K2". */
export function editTitle({ name }: Pick<VersionRow, "name">): string {
  return capital(name);
}
