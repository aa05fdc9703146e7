import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Volts } from "../base/units.ts";
import type { Around, Doing, PartView } from "../parts/kind.ts";
import { allNodes } from "../solve/solver.ts";
import { doingsIn } from "./doing.ts";
import type { CircuitNetwork } from "./network.ts";
import type { Rig } from "./rig.ts";
import { type NodeStates, wireStates } from "./wireState.ts";

/** Everything read out of a rig at one moment; arrays are by node or by element. */
export interface Snapshot {
  readonly volts: Float64Array;
  readonly sourceOhms: Float64Array;
  readonly amps: Float64Array;
  /** 1 where an element passes nothing. */
  readonly isOpen: Uint8Array;
  readonly nodes: NodeStates;
  readonly doing: ReadonlyMap<PartId, Doing>;
  readonly states: ReadonlyMap<PartId, string>;
  readonly closed: ReadonlyMap<PartId, ReadonlySet<string>>;
}

/** Reads a settled rig out: volts, amps and source ohms, wire states, and what every part does. */
export function snapshotOf(rig: Rig): Snapshot {
  const { network, solver } = rig;
  const volts = new Float64Array(network.nodeCount);
  const sourceOhms = new Float64Array(network.nodeCount);
  const amps = new Float64Array(network.elements.length);
  solver.readOut(allNodes(solver.pattern), volts, sourceOhms);
  solver.readAllAmps(amps);
  const doing = doingsIn(rig);
  const isOpen = rig.isOpen.slice();
  const nodes = wireStates(network, isOpen, volts, alwaysClosedOf(network));
  return { volts, sourceOhms, amps, isOpen, nodes, doing, states: new Map(rig.states), closed: rig.closedNow() };
}

/** Per element, whether it is a contact that no control opens: joined in every position, or a fuse's or breaker's own. */
export const alwaysClosedOf = remember((network: CircuitNetwork): Uint8Array => {
  const closed = new Uint8Array(network.elements.length);
  for (const { kind, view, elements } of network.parts.values()) {
    if (kind.role !== "protection" && (view.controls.length === 0 || kind.start !== "")) continue;
    const inEvery = positionsOf(view, network.circuit.nominalVolts).map(
      (around) => new Set(kind.closed(view, kind.start, around)),
    );
    for (const [key, index] of elements) if (inEvery.every((keys) => keys.has(key))) closed[index] = 1;
  }
  return closed;
});

/** Every position of every control of a part, the others at rest; just rest where it has none. */
function positionsOf(view: PartView, nominalVolts: Volts): readonly Around[] {
  const rest = Object.fromEntries(view.controls.map((control) => [control.name, control.positions[0]?.name ?? ""]));
  const around = (positions: Around["positions"]): Around => ({
    positions,
    drive: {},
    engineRunning: false,
    ambientC: 20,
    nominalVolts,
  });
  const thrown = view.controls.flatMap((control) =>
    control.positions.map(({ name }) => around({ ...rest, [control.name]: name })),
  );
  return thrown.length === 0 ? [around(rest)] : thrown;
}
