import type { ControlKey } from "../base/ids.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { type CircuitControl, controlAt, controlsOf } from "../circuit/points.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { ProbeOrder } from "../diagnose/step.ts";

/** A few words on what to set; bold is what a hand must hold, pull apart or switch off. */
export interface SetWords {
  readonly words: string;
  readonly isBold: boolean;
}

/** What a person calls a control: "Key" for the only key switch, else its designator, with its name on a panel of several. */
export function controlName(circuit: Circuit, key: ControlKey): string {
  const found = controlAt(circuit, key);
  if (!found) return key;
  if (isKey(found) && controlsOf(circuit).filter(isKey).length === 1) return WORDS.key;
  const { name, label } = found.control;
  return key === found.part.id ? key : `${found.part.id} ${label ?? name}`;
}

/** True for the switch that the key turns. */
export function isKey({ part }: CircuitControl): boolean {
  return part.kind === "ignition-switch";
}

/** Name of the position a control jumps back to when let go; undefined where this one latches. */
export function springsBack(circuit: Circuit, key: ControlKey, position: string): boolean {
  const positions = controlAt(circuit, key)?.control.positions ?? [];
  return positions.find((each) => each.name === position)?.springsBackTo !== undefined;
}

/** Keys of all controls that some row of the order throws or sweeps, in the order they first appear. */
export function thrownIn(order: ProbeOrder): readonly ControlKey[] {
  const keys = order.steps.flatMap((step) => [
    ...step.settings.flatMap(({ condition }) => Object.keys(condition.set ?? {})),
    ...(step.sweepOf === null ? [] : [step.sweepOf]),
  ]);
  return [...new Set(keys)];
}

/** A condition in words, line by line: latched controls, those that matter and rest, then what is held, apart or off. */
export function conditionWords(
  circuit: Circuit,
  condition: Condition,
  matters: readonly ControlKey[],
): readonly SetWords[] {
  const set = Object.entries(condition.set ?? {});
  const name = (key: ControlKey): string => controlName(circuit, key);
  const latched = set.filter(([key, position]) => !springsBack(circuit, key, position));
  const held = set.filter(([key, position]) => springsBack(circuit, key, position));
  const resting = matters.filter((key) => condition.set?.[key] === undefined);
  return [
    ...latched.map(([key, position]) => ({ words: `${name(key)} ${printedPosition(position)}`, isBold: false })),
    ...restingWords(circuit, resting),
    ...held.map(([key, position]) => bold(WORDS.hold(name(key), printedPosition(position)))),
    ...(condition.apart ?? []).map((id) => bold(WORDS.apart(id))),
    ...(condition.out ?? []).map((id) => bold(WORDS.out(id))),
    ...(condition.batteryOff ? [bold(WORDS.batteryOff)] : []),
    ...Object.entries(condition.drive ?? {}).map(([point, level]) => bold(WORDS.driven(point, level))),
    ...(condition.running ? [bold(WORDS.running)] : []),
  ];
}

function bold(words: string): SetWords {
  return { words, isBold: true };
}

/** Controls that rest, those in one position on a line: "S2, S5 rest". A key that is off is bold: most rows want it on. */
function restingWords(circuit: Circuit, keys: readonly ControlKey[]): readonly SetWords[] {
  const resting = keys.map((key) => ({ key, position: printedPosition(controlAt(circuit, key)?.rest ?? WORDS.rest) }));
  const isTheKey = ({ key }: { readonly key: ControlKey }): boolean => controlName(circuit, key) === WORDS.key;
  const others = resting.filter((each) => !isTheKey(each));
  const lines = [...new Set(others.map(({ position }) => position))].map((position) => {
    const names = others.filter((each) => each.position === position).map(({ key }) => controlName(circuit, key));
    return { words: `${names.join(", ")} ${position}`, isBold: false };
  });
  return [...resting.filter(isTheKey).map(({ position }) => bold(`${WORDS.key} ${position}`)), ...lines];
}
