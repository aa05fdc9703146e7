import type { ControlKey } from "../../core/base/ids.ts";
import { type CircuitControl, controlsOf } from "../../core/circuit/points.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { positionNow } from "../../core/edit/commands/throwControl.ts";
import { controlTitle } from "../words/condition.ts";
import type { Ids } from "./focus.ts";

/** A control that can be thrown on the wall: how it stands, and where a press throws it. */
export interface ClassControl {
  readonly key: ControlKey;
  /** "S6 open". */
  readonly words: string;
  readonly isThrown: boolean;
  readonly next: string;
}

/** Controls on the wall at most: they share a line with the state in words. */
const MOST = 2;

/** The controls of what is in focus: those thrown lately first, then those that do not stand at rest. */
export function controlsFor(bench: Bench, focus: Ids | null, recent: readonly ControlKey[]): readonly ClassControl[] {
  const { circuit } = bench;
  const controls = controlsOf(circuit).filter(({ part }) => focus?.has(part.id) ?? true);
  const standing = controls.map((control) => ({ control, now: positionNow(bench, control.key) ?? control.rest }));
  const rank = ({ control, now }: (typeof standing)[number]): number => {
    const at = recent.indexOf(control.key);
    if (at >= 0) return at;
    return recent.length + (now === control.rest ? 1 : 0);
  };
  return standing
    .toSorted((one, other) => rank(one) - rank(other))
    .slice(0, MOST)
    .map(({ control, now }) => ({
      key: control.key,
      words: `${controlTitle(circuit, control)} ${now.replaceAll("-", " ")}`,
      isThrown: now !== control.rest,
      next: after(control, now),
    }));
}

/** The position after this one, in the order of the control; the first after the last. */
function after({ control: { positions }, rest }: CircuitControl, now: string): string {
  const at = positions.findIndex(({ name }) => name === now);
  return positions[(at + 1) % positions.length]?.name ?? rest;
}
