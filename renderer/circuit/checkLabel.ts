import { EXPECTED_WORDS } from "../../core/base/words/wiring.ts";
import type { Circuit, Condition, Expectation } from "../../core/circuit/circuit.ts";
import { controlAt, partAt } from "../../core/circuit/points.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { conditionList } from "../words/condition.ts";

/** What a load of a kind does when it works, where a better word is known. */
const WORKING: Readonly<Record<string, string>> = {
  lamp: "lights",
  led: "lights",
  "two-filament-lamp": "lights",
  horn: "sounds",
  heater: "warms",
  solenoid: "pulls in",
  relay: "pulls in",
  alternator: "charges",
};

/** What a motor does while a control stands so, by the name of the position. */
const MOVING: Readonly<Record<string, string>> = {
  open: "opens",
  close: "closes",
  up: "goes up",
  down: "goes down",
  lock: "locks",
  unlock: "unlocks",
};

/** What a load is expected to do, in the word that fits its kind: "lights", "pulls in", "runs forward". */
export function expectedWord(circuit: Circuit, load: string, expect: Expectation): string {
  const kind = partAt(circuit, load)?.kind ?? "";
  return (expect === "on" ? WORKING[kind] : undefined) ?? EXPECTED_WORDS[expect];
}

/**
 * A name for a function check, in words: what the load is, what it should do, and what is set by hand beside the key, as in
 * "Front left vent opens, S3 held open".
 */
export function checkLabel(circuit: Circuit, load: string, expect: Expectation, condition: Condition): string {
  const part = partAt(circuit, load);
  const moves = expect === "forward" || expect === "reverse" ? movingWord(condition) : undefined;
  const does = moves ?? expectedWord(circuit, load, expect);
  const name = part?.label ?? load;
  const named = moves === undefined ? name : withoutKind(name, kindOf(part?.kind ?? "")?.title ?? "");
  return [`${named} ${does}`, ...conditionList(circuit, withoutKeys(circuit, condition))].join(", ");
}

/** The word for the way a motor goes, from the last control that stands in a position which has one. */
function movingWord({ set = {} }: Condition): string | undefined {
  return Object.values(set)
    .toReversed()
    .map((position) => MOVING[position])
    .find((word) => word !== undefined);
}

/** "Rear vent motor" as "Rear vent": what opens is the vent. */
function withoutKind(name: string, kind: string): string {
  const end = ` ${kind.toLowerCase()}`;
  return name.toLowerCase().endsWith(end) ? name.slice(0, -end.length) : name;
}

/** The key is on in nearly every check: it tells none from another. */
function withoutKeys(circuit: Circuit, condition: Condition): Condition {
  const set = Object.entries(condition.set ?? {}).filter(
    ([key]) => controlAt(circuit, key)?.part.kind !== "ignition-switch",
  );
  return { ...condition, set: Object.fromEntries(set) };
}
