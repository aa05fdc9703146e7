import { capital } from "../../core/base/capital.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { type CircuitControl, controlAt, controlsOf, springsBack } from "../../core/circuit/points.ts";
import { signed } from "./figures.ts";

/** The name of a position as people read it: "speed-1" as "Speed 1". */
export function positionTitle(position: string): string {
  const words = position.replaceAll("-", " ");
  return capital(words);
}

/** What a control is called in running words: "Key" for the only key, else "S6", or "S2 Rear" on a panel of several. */
export function controlTitle(circuit: Circuit, { key, part, control }: CircuitControl): string {
  const keys = controlsOf(circuit).filter((each) => each.part.kind === "ignition-switch");
  if (keys.length === 1 && keys[0]?.key === key) return "Key";
  return key === part.id ? part.id : `${part.id} ${control.label ?? positionTitle(control.name)}`;
}

/** One thrown control in words: "Key on", "S6 held open". */
export function thrownWords(circuit: Circuit, key: string, position: string): string {
  const control = controlAt(circuit, key);
  const held = springsBack(circuit, key, position) ? "held " : "";
  return `${control ? controlTitle(circuit, control) : key} ${held}${position.replaceAll("-", " ")}`;
}

/** All that differs from rest, each in a few words; empty at rest. Controls that stand at their rest are left out. */
export function conditionList(circuit: Circuit, condition: Condition): readonly string[] {
  const set = Object.entries(condition.set ?? {}).filter(
    ([key, position]) => controlAt(circuit, key)?.rest !== position,
  );
  return [
    ...set.map(([key, position]) => thrownWords(circuit, key, position)),
    ...(condition.apart ?? []).map((id) => `${id} apart`),
    ...(condition.out ?? []).map((id) => `${id} out`),
    ...(condition.batteryOff ? ["battery off"] : []),
    ...Object.entries(condition.drive ?? {}).map(([pin, level]) => `${pin} driven ${level}`),
    ...(condition.running ? ["engine running"] : []),
    ...(condition.ambientC === undefined ? [] : [`${signed(condition.ambientC)}\u00A0°C`]),
  ];
}

/** The condition as one phrase: "Key on, S6 held open"; "All at rest" where nothing differs. */
export function conditionPhrase(circuit: Circuit, condition: Condition): string {
  const list = conditionList(circuit, condition);
  if (list.length === 0) return "All at rest";
  const words = list.join(", ");
  return capital(words);
}
