import type { Seen, Wire } from "../circuit/circuit.ts";
import type { Change } from "./change.ts";

/** What was seen of a wire, but for the place of one of its ends. */
export function seenWithout({ from, to, ...rest }: Seen, end: "from" | "to"): Seen {
  return {
    ...rest,
    ...(end === "to" && from !== undefined && { from }),
    ...(end === "from" && to !== undefined && { to }),
  };
}

/** With an end of a wire elsewhere, the place where that end was seen says nothing any more. */
export function placeForgotten({ id, seen }: Wire, end: "from" | "to"): readonly Change[] {
  if (seen?.[end] === undefined) return [];
  return [{ change: "item", list: "wires", id, field: "seen", value: seenWithout(seen, end) }];
}
