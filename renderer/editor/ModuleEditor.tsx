import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalsOf } from "../../core/circuit/points.ts";
import type { Part } from "../../core/parts/kind.ts";
import { pinRoles } from "../../core/parts/module.ts";
import { ModulePins } from "./ModulePins.tsx";
import { WhenThenTable } from "./WhenThenTable.tsx";

/** What a control module is: its pins with what each does, and what it joins inside when. */
export function ModuleEditor({ circuit, part }: { readonly circuit: Circuit; readonly part: Part }) {
  const roles = pinRoles({ part, terminals: terminalsOf(circuit, part) });
  return (
    <>
      <ModulePins circuit={circuit} part={part} roles={roles} />
      <WhenThenTable part={part} roles={roles} />
    </>
  );
}
