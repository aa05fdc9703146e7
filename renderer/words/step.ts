import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import type { ProbeOrder, Step } from "../../core/diagnose/step.ts";
import { conditionList, controlTitle } from "./condition.ts";

/** Controls that some row of an order moves, in the order they first appear. */
export function movedIn({ steps }: ProbeOrder): readonly string[] {
  const keys = steps.flatMap(({ settings, sweepOf }) => [
    ...settings.flatMap(({ condition }) => Object.keys(condition.set ?? {})),
    ...(sweepOf === null ? [] : [sweepOf]),
  ]);
  return [...new Set(keys)];
}

/** What to set for a row: "Key on, S6 at rest (let go)". Controls that other rows move and this one does not are named. */
export function settingWords(circuit: Circuit, condition: Condition, moved: readonly string[]): string {
  const said = conditionList(circuit, condition);
  const resting = controlsOf(circuit)
    .filter(({ key, rest }) => moved.includes(key) && (condition.set?.[key] ?? rest) === rest)
    .map((control) => `${controlTitle(circuit, control)} ${control.rest === "rest" ? "at rest" : control.rest}`);
  const words = [...said, ...resting].join(", ");
  return words === "" ? "All at rest" : words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is held and set while a control is swept: all but the swept control itself. */
export function sweepSetting(circuit: Circuit, { settings, sweepOf }: Step): string {
  const [first] = settings;
  if (!first || sweepOf === null) return "";
  const { [sweepOf]: _, ...others } = first.condition.set ?? {};
  return settingWords(circuit, { ...first.condition, set: others }, []);
}

/** Where red, black and the lamp go. A lamp row is read by eye with the lamp between the two. */
export function leadWords({ point, black, lampTo, instrument }: Step): {
  readonly red: string;
  readonly black: string;
  readonly lamp: string | null;
} {
  const minus = (lead: string): string => lead.replace(" -", " −");
  const lamp =
    lampTo === null
      ? null
      : lampTo === "battery +"
        ? `${instrument}: battery + to ${point}`
        : `${instrument}: ${point} to battery −`;
  return { red: point, black: minus(black), lamp };
}
