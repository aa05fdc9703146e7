import { assert } from "../base/outcome.ts";
import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import { commanded } from "../diagnose/commanded.ts";
import { conditionText } from "../live/condition.ts";
import type { Move } from "./move.ts";

/** The condition of the vehicle after a move; the same one where the move leaves it as it stands. */
export function conditionAfter(circuit: Circuit, now: Condition, move: Move): Condition {
  switch (move.do) {
    case "throw":
      return tidy({ ...now, set: thrown(circuit, now.set, move.control, move.position) });
    case "try":
      return tried(now, triedAs(circuit, move.check));
    case "engine":
      return tidy({ ...now, running: move.running });
    case "unplug":
      return tidy({ ...now, apart: [...(now.apart ?? []), move.connector] });
    case "plug-in":
      return tidy({ ...now, apart: (now.apart ?? []).filter((id) => id !== move.connector) });
    case "take-out":
      return tidy({ ...now, out: [...(now.out ?? []), move.part] });
    case "put-in":
    case "renew":
      return tidy({ ...now, out: (now.out ?? []).filter((id) => id !== move.part) });
    default:
      return now;
  }
}

/** What controls are set to once one more is thrown: it comes last, and at rest it is not named. */
function thrown(circuit: Circuit, set: Condition["set"], key: string, position: string): NonNullable<Condition["set"]> {
  const { [key]: _, ...others } = set ?? {};
  return controlAt(circuit, key)?.rest === position ? others : { ...others, [key]: position };
}

/** The check of this id as it is tried: an output that the drawing does not decide is asked for. It must be there. */
export function triedAs(circuit: Circuit, id: string): FunctionCheck {
  const check = circuit.checks.find((each) => each.id === id);
  assert(check, `no function check ${id}`);
  return commanded(circuit, check);
}

/** All that a check sets, with plugs and fuses left as they are. */
function tried({ apart, out }: Condition, { condition }: FunctionCheck): Condition {
  return tidy({ ...condition, ...(apart && { apart }), ...(out && { out }) });
}

/** Only what differs from rest. */
function tidy({ set = {}, apart = [], out = [], running, ...rest }: Condition): Condition {
  return {
    ...(Object.keys(set).length > 0 && { set }),
    ...(apart.length > 0 && { apart }),
    ...(out.length > 0 && { out }),
    ...rest,
    ...(running && { running }),
  };
}

/** Controls, outputs and the engine that a check sets otherwise than they stand now. */
export function throwsTo(now: Condition, { condition }: FunctionCheck): number {
  const one = settingsOf(now);
  const other = settingsOf(condition);
  return [...new Set([...one.keys(), ...other.keys()])].filter((key) => one.get(key) !== other.get(key)).length;
}

function settingsOf({ set = {}, drive = {}, running = false }: Condition): ReadonlyMap<string, unknown> {
  const settings = new Map<string, unknown>([...Object.entries(set), ...Object.entries(drive)]);
  if (running) settings.set("engine", true);
  return settings;
}

/** The function checks that a condition tries: theirs to the last setting, in whatever order it was thrown. */
export function checksIn(circuit: Circuit, condition: Condition): readonly FunctionCheck[] {
  const stands = orderless(condition);
  return circuit.checks.filter((check) => orderless(commanded(circuit, check).condition) === stands);
}

function orderless(condition: Condition): string {
  return conditionText(condition).split(",").sort().join();
}
