import type { PartId } from "../base/ids.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { Circuit, Condition } from "./circuit.ts";
import { type CircuitControl, controlAt } from "./points.ts";
import { ownPosition, printedPosition } from "./positionWords.ts";

/** A control that stands off its rest, in words: `S5`, held, `OPEN`. */
export interface OffRest {
  readonly control: CircuitControl;
  readonly position: string;
  readonly isHeld: boolean;
}

/** Every control that a condition sets off its rest, in the order thrown. */
export function offRest(circuit: Circuit, condition: Condition): readonly OffRest[] {
  return Object.entries(condition.set ?? {}).flatMap(([key, position]): readonly OffRest[] => {
    const control = controlAt(circuit, key);
    if (control === undefined || position === control.rest) return [];
    const standing = control.control.positions.find(({ name }) => name === position);
    return [{ control, position, isHeld: standing?.springsBackTo !== undefined }];
  });
}

/**
 * How one control off its rest is said beside its part: `held OPEN`, or `Rear held OPEN` where the part has several; on
 * a screen `held open`.
 */
export function standingText(
  { control, position, isHeld }: OffRest,
  { withName, isScreen = false }: { readonly withName: boolean; readonly isScreen?: boolean },
): string {
  const name = withName ? `${control.control.label ?? control.control.name} ` : "";
  return `${name}${isHeld ? `${SHEET_WORDS.held} ` : ""}${(isScreen ? ownPosition : printedPosition)(position)}`.trim();
}

/** What of all that stands off its rest does so on one part. */
export function standingOn(standing: readonly OffRest[], part: PartId, isScreen: boolean): readonly string[] {
  const here = standing.filter(({ control }) => control.part.id === part);
  return here.map((each) => standingText(each, { withName: each.control.key !== part, isScreen }));
}

/** Everything that differs from rest, in words: `key ON · S5 held OPEN · X5 apart`; one phrase where nothing does. */
export function conditionWords(circuit: Circuit, condition: Condition): readonly string[] {
  const thrown = offRest(circuit, condition).map((each) => {
    const { part, key } = each.control;
    const name = part.kind === "ignition-switch" ? SHEET_WORDS.key : part.id;
    return `${name} ${standingText(each, { withName: key !== part.id })}`;
  });
  const said = [
    ...thrown,
    ...(condition.apart ?? []).map((id) => `${id} ${SHEET_WORDS.apart}`),
    ...(condition.out ?? []).map((id) => `${id} ${SHEET_WORDS.out}`),
    ...Object.entries(condition.drive ?? {}).map(([pin, level]) => `${pin} ${SHEET_WORDS.driven} ${level}`),
    ...(condition.batteryOff ? [SHEET_WORDS.batteryOff] : []),
    ...(condition.running ? [SHEET_WORDS.running] : []),
    ...(condition.ambientC === undefined ? [] : [`${condition.ambientC}\u00A0°C`]),
  ];
  return said.length > 0 ? said : [SHEET_WORDS.allAtRest];
}
