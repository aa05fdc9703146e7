import { remember } from "../base/memo.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { judge } from "../live/judge.ts";
import { liveOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";

/**
 * A check whose load hangs on an output that the drawing does not decide, as if the module asked for it: the output that
 * makes it work is driven. Any other check as it is.
 */
export function commanded(circuit: Circuit, check: FunctionCheck): FunctionCheck {
  const known = commandedIn(circuit);
  const found = known.get(check) ?? worked(circuit, check);
  known.set(check, found);
  return found;
}

const commandedIn = remember((_: Circuit) => new Map<FunctionCheck, FunctionCheck>());

function worked(circuit: Circuit, check: FunctionCheck): FunctionCheck {
  if (check.expect === "off") return check;
  const rig = new Rig(circuit);
  reach(rig, check.condition);
  for (const placed of rig.network.parts.values()) {
    const { kind, view, part } = placed;
    const pins = kind.unset?.(view, rig.states.get(part.id)!, rig.sees(placed), rig.around(placed)) ?? [];
    for (const pin of pins) {
      const drive = { ...check.condition.drive, [`${part.id}.${pin}`]: "on" } as const;
      const condition = { ...check.condition, drive };
      const driven = { ...check, condition };
      if (doesWork(circuit, driven) && !doesWork(circuit, check)) return driven;
    }
  }
  return check;
}

function doesWork(circuit: Circuit, check: FunctionCheck): boolean {
  const load = liveOf(circuit, check.condition).parts.get(check.load);
  return load !== undefined && load.doing !== "off" && judge(check, { ...load, level: 1 }) === "works";
}
