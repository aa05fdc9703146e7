import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { type Fault, faultModes, type Target } from "../../core/live/fault.ts";
import type { Lots } from "../lots.ts";

/** A condition by lot: some controls thrown, now and then a plug apart, a part out, the engine running, another ambient. */
export function randomCondition(circuit: Circuit, lots: Lots): Condition {
  const set = Object.fromEntries(
    controlsOf(circuit)
      .filter(() => lots.happens(0.6))
      .map(({ key, control }) => [key, lots.oneOf(control.positions).name]),
  );
  const joints = circuit.connectors.map(({ id }) => id);
  const fuses = circuit.parts.filter(({ kind }) => kind === "fuse" || kind === "relay").map(({ id }) => id);
  return {
    set,
    ...(joints.length > 0 && lots.happens(0.2) && { apart: [lots.oneOf(joints)] }),
    ...(lots.happens(0.15) && { out: [lots.oneOf(fuses)] }),
    ...(lots.happens(0.02) && { batteryOff: true }),
    ...(lots.happens(0.3) && { running: true }),
    ...(lots.happens(0.3) && { ambientC: lots.between(-30, 90) }),
  };
}

/** One or two faults by lot, on any part, wire or place in a connector, with a usual value. */
export function randomFaults(circuit: Circuit, lots: Lots): readonly Fault[] {
  const targets: readonly Target[] = [
    ...circuit.parts.map(({ id }): Target => ({ is: "part", id })),
    ...circuit.wires.map(({ id }): Target => ({ is: "wire", id })),
    ...circuit.connectors.flatMap(({ id, rows }) =>
      rows.flat().map((cavity): Target => ({ is: "cavity", id: `${id}-${cavity}`, connector: id, cavity })),
    ),
  ];
  const faults: Fault[] = [];
  for (let wanted = 1 + lots.upTo(2); wanted > 0; ) {
    const target = lots.oneOf(targets);
    const modes = faultModes(circuit, target);
    if (modes.length === 0) continue;
    wanted--;
    const { mode, value } = lots.oneOf(modes);
    if (mode === "crossed") {
      const other = lots.oneOf(circuit.wires).id;
      if (other !== target.id) faults.push({ target: target.id, mode, value: other });
    } else faults.push({ target: target.id, mode, ...(value && { value: lots.oneOf(value.usual) }) });
  }
  return faults;
}

/** Every condition worth a look in a drawn circuit: rest, each control alone in each position, its checks and scenes. */
export function everyCondition(circuit: Circuit): readonly Condition[] {
  return [
    {},
    ...controlsOf(circuit).flatMap(({ key, control }) =>
      control.positions.map(({ name }) => ({ set: { [key]: name } })),
    ),
    ...circuit.checks.map(({ condition }) => condition),
    ...circuit.scenes.map(({ condition }) => condition),
  ];
}
