import type { Change } from "./change.ts";

/** The changes that make one item of a list another one of the same id, field by field. */
export function itemChanges<L extends "pages" | "parts" | "access" | "checks">(
  list: L,
  was: { readonly id: string },
  now: { readonly id: string },
): readonly Change[] {
  const before = was as Readonly<Record<string, unknown>>;
  const after = now as Readonly<Record<string, unknown>>;
  const fields = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return fields
    .filter((field) => JSON.stringify(before[field]) !== JSON.stringify(after[field]))
    .map(
      (field) =>
        ({
          change: "item",
          list,
          id: was.id,
          field,
          ...(after[field] !== undefined && { value: after[field] }),
        }) as Change,
    );
}
