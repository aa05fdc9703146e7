import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Reach } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Takes an access group out; what is reached through it or comes after it no longer says so. Refuses `access-unknown`. */
export function removeAccess(bench: Bench, id: string): Outcome<Edit> {
  const { access, reach } = bench.circuit;
  const group = access.find((each) => each.id === id);
  if (!group) return refuse("access-unknown", { access: id });
  const changes: readonly Change[] = [
    ...Object.entries(reach).flatMap(([key, value]): readonly Change[] =>
      value.access === id ? [{ change: "entry", record: "reach", key, ...withoutAccess(value) }] : [],
    ),
    ...access.flatMap((each): readonly Change[] => {
      const after = each.after?.filter((earlier) => earlier !== id);
      const isSame = after?.length === each.after?.length;
      return isSame || !after ? [] : [{ change: "item", list: "access", id: each.id, field: "after", value: after }];
    }),
    { change: "remove", list: "access", id },
  ];
  return editOf(bench, WIRING_NAMES.removeAccess(group.label), changes);
}

/** What is left to say of a place; nothing where only the group was said. */
function withoutAccess({ access: _, ...value }: Reach): { readonly value?: Reach } {
  return Object.keys(value).length > 0 ? { value } : {};
}
