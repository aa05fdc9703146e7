import type { ControlKey } from "../../core/base/ids.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { type CircuitControl, controlsOf } from "../../core/circuit/points.ts";

/** What decides which controls are in hand. */
export interface InHand {
  readonly circuit: Circuit;
  readonly condition: Condition;
  readonly page: string;
  /** Thrown lately, newest first. */
  readonly recent: readonly ControlKey[];
  /** Controls of the complaint and of the active step. */
  readonly wanted: readonly ControlKey[];
  /** Those that stand in the strip now. */
  readonly standing: readonly ControlKey[];
}

/** A control's claim to a place in the strip; far is one that nothing but its being drawn elsewhere speaks for. */
export interface Claim {
  readonly key: ControlKey;
  readonly isFar: boolean;
}

/**
 * All controls, those with the best claim to a place first: key, thrown, wanted, thrown lately, standing there already,
 * those of the page shown, then the far ones; within each the order of the circuit.
 */
export function byClaim({ circuit, condition, page, recent, wanted, standing }: InHand): readonly Claim[] {
  const thrown = Object.keys(condition.set ?? {});
  const rank = (control: CircuitControl): number => {
    if (isKey(control)) return 0;
    const first = [thrown, wanted, recent, standing].findIndex((keys) => keys.includes(control.key));
    if (first >= 0) return first + 1;
    return isOfPage(circuit, control, page) ? 5 : FAR;
  };
  return controlsOf(circuit)
    .map((control) => ({ key: control.key, rank: rank(control) }))
    .sort((one, other) => one.rank - other.rank)
    .map(({ key, rank: its }) => ({ key, isFar: its === FAR }));
}

const FAR = 6;

/** Whether a control's part stands on this page of the circuit. */
export function isOfPage(circuit: Circuit, { part }: CircuitControl, page: string): boolean {
  return circuit.placement.parts[part.id]?.page === page;
}

/** All controls in an order that no throw changes: the key, then that of the circuit. */
export function inCircuitOrder(circuit: Circuit): readonly CircuitControl[] {
  return [...controlsOf(circuit)].sort((one, other) => Number(isKey(other)) - Number(isKey(one)));
}

/** All controls for a row that is pushed sideways: the key, those of the page shown, then the rest. */
export function pageFirst(circuit: Circuit, page: string): readonly CircuitControl[] {
  const rank = (control: CircuitControl): number => (isKey(control) ? 0 : isOfPage(circuit, control, page) ? 1 : 2);
  return [...controlsOf(circuit)].sort((one, other) => rank(one) - rank(other));
}

function isKey({ part }: CircuitControl): boolean {
  return part.kind === "ignition-switch";
}

/** Controls under the page that they stand on. */
export interface ControlsOfPlace {
  /** "This page", the number and title of another, or "On no page". */
  readonly place: string;
  readonly controls: readonly CircuitControl[];
}

/** These controls by page: those of the page shown first, then page by page, last those that are drawn nowhere. */
export function controlsByPlace(
  circuit: Circuit,
  controls: readonly CircuitControl[],
  page: string,
): readonly ControlsOfPlace[] {
  const ofPage = (id: string): readonly CircuitControl[] =>
    controls.filter((control) => isOfPage(circuit, control, id));
  const other = circuit.pages.flatMap(({ id, title }, index) =>
    id === page ? [] : [{ place: `Page ${index + 1}, ${title}`, controls: ofPage(id) }],
  );
  const nowhere = controls.filter(({ part }) => circuit.placement.parts[part.id] === undefined);
  const all = [{ place: "This page", controls: ofPage(page) }, ...other, { place: "On no page", controls: nowhere }];
  return all.filter((each) => each.controls.length > 0);
}
