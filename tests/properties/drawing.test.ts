import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { netOf, netsOf } from "../../core/circuit/nets.ts";
import { connectorAt, controlsOf, pointsOf, terminalsOf } from "../../core/circuit/points.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { addConnector } from "../../core/edit/commands/addConnector.ts";
import { bendWire } from "../../core/edit/commands/bendWire.ts";
import { changePins } from "../../core/edit/commands/changePins.ts";
import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { changeTerminals } from "../../core/edit/commands/changeTerminals.ts";
import { drawWire } from "../../core/edit/commands/drawWire.ts";
import { drawWireToWire } from "../../core/edit/commands/drawWireToWire.ts";
import { fillCavity } from "../../core/edit/commands/fillCavity.ts";
import { fillPins } from "../../core/edit/commands/fillPins.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { reattachWire } from "../../core/edit/commands/reattachWire.ts";
import { removeControl } from "../../core/edit/commands/removeControl.ts";
import { renameControl } from "../../core/edit/commands/renameControl.ts";
import { setRows } from "../../core/edit/commands/setRows.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { deskFor, perform, undo } from "../../core/edit/history.ts";
import {
  joinToggled,
  positionAdded,
  positionMoved,
  positionRemoved,
  positionRenamed,
  positionSprings,
} from "../../core/edit/positionTable.ts";
import { segmentMoved } from "../../core/edit/setBends.ts";
import { pathOf } from "../../core/edit/wirePath.ts";
import { faultText } from "../../core/live/fault.ts";
import { circuitOf, formatCircuit } from "../../schemas/circuit.ts";
import type { Json } from "../../schemas/json.ts";
import { expectSame, expectSound, got, SMALL, VENTS } from "../edit/given.ts";
import { type Lots, lotsOf } from "../lots.ts";

const ROLES = ["supply", "ground", "input", "drives-high", "unknown"] as const;

/** One command by lot, from what the bench has; many are refused. */
function anyCommand(bench: Bench, lots: Lots): Outcome<Edit> {
  const { circuit } = bench;
  const point = (): string => lots.oneOf(pointsOf(circuit)).id;
  const wire = lots.oneOf(circuit.wires);
  const connector = lots.oneOf(circuit.connectors);
  const part = lots.oneOf(circuit.parts);
  const chip = circuit.parts.find(({ kind }) => kind === "module") ?? part;
  const control = lots.oneOf(controlsOf(circuit));
  const terminals = terminalsOf(circuit, part);
  const makes: readonly (() => Outcome<Edit>)[] = [
    () =>
      drawWire(bench, point(), point(), {
        colour: lots.oneOf(["RD", "bn/wh", ""]),
        mm2: 1,
        metres: whole(lots, 0, 9),
      }),
    () => drawWireToWire(bench, point(), wire.id, { x: whole(lots, 0, 120), y: whole(lots, 0, 90) }),
    () => bendWire(bench, wire.id, lots.happens(0.3) ? [] : [[whole(lots, 0, 110), whole(lots, 0, 80)]]),
    () => {
      const corners = pathOf(circuit, wire)?.corners ?? [];
      return bendWire(bench, wire.id, segmentMoved(corners, whole(lots, 0, corners.length), whole(lots, -6, 6)));
    },
    () => reattachWire(bench, wire.id, lots.oneOf(["from", "to"]), point()),
    () =>
      addConnector(bench, {
        rows: [
          ["1", "2"],
          ["A", ""],
        ],
      }),
    () =>
      setRows(
        bench,
        connector.id,
        connector.rows.map((row) => row.map((name) => otherName(name, lots))),
      ),
    () => setRows(bench, connector.id, lots.happens(0.5) ? [...connector.rows, ["N"]] : connector.rows.slice(1)),
    () => fillCavity(bench, connector.id, lots.oneOf(connector.rows.flat()), lots.happens(0.3) ? null : point()),
    () => fillPins(bench, connector.id, `${lots.oneOf(connector.rows.flat())} GY/BK x / 9 VT / 1 BU`),
    () => changePositions(bench, control.part.id, control.control.name, otherTable(control.control.positions, lots)),
    () => renameControl(bench, control.part.id, control.control.name, lots.oneOf(["left", "right"])),
    () => changePositions(bench, control.part.id, lots.oneOf(["left", "extra"]), [{ name: "off", joins: [] }]),
    () => removeControl(bench, control.part.id, control.control.name),
    () =>
      changeTerminals(
        bench,
        part.id,
        terminals.map((name) => otherName(name, lots)),
      ),
    () => changeTerminals(bench, part.id, lots.happens(0.5) ? [...terminals, "n"] : terminals.slice(1)),
    () =>
      changePins(bench, chip.id, Object.fromEntries(terminalsOf(circuit, chip).map((pin) => [pin, lots.oneOf(ROLES)]))),
    () => throwControl(bench, control.key, lots.oneOf(control.control.positions).name),
    () => plantFault(bench, faultText(lots.oneOf(possibleFaults(circuit)).faults[0]!)),
  ];
  return lots.oneOf(makes)();
}

/** A whole number from the one to the other. */
function whole(lots: Lots, low: number, high: number): number {
  return low + lots.upTo(high - low + 1);
}

function otherName(name: string, lots: Lots): string {
  return name !== "" && lots.happens(0.3) ? `${name.slice(0, 3)}${lots.oneOf(["a", "b"])}` : name;
}

function otherTable(positions: Parameters<typeof joinToggled>[0], lots: Lots): typeof positions {
  const index = whole(lots, 0, positions.length - 1);
  const names = positions.flatMap(({ joins }) => joins.flat());
  return lots.oneOf([
    () => (names.length === 0 ? positions : joinToggled(positions, index, lots.oneOf(names), lots.oneOf(names))),
    () => positionAdded(positions, `new ${whole(lots, 1, 9)}`, index),
    () => positionRemoved(positions, index),
    () => positionRenamed(positions, index, `other ${whole(lots, 1, 9)}`),
    () => positionMoved(positions, index, whole(lots, 0, positions.length - 1)),
    () => positionSprings(positions, index, lots.happens(0.5) ? null : positions[0]!.name),
  ])();
}

/** Fails where the file of a circuit would be written otherwise once it is read again: a wire beside its cavity. */
function expectWrittenOnce(bench: Bench): void {
  const text = formatCircuit(bench.circuit);
  expect(formatCircuit(got(circuitOf(JSON.parse(text) as Json)))).toBe(text);
}

describe("any commands that draw wires, connectors and tables", () => {
  test.each([
    ["a small circuit", SMALL, 25, 24],
    ["sample 1", VENTS, 3, 24],
  ] as const)("on %s leave a circuit that a file may hold, and are undone to the byte", (_, circuit, runs, steps) => {
    let made = 0;
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const lots = lotsOf(seed);
        let desk = deskFor(benchFor(circuit));
        for (let step = 0; step < steps; step++) {
          const edit = anyCommand(desk.bench, lots);
          if (!edit.ok) continue;
          made++;
          desk = got(perform(desk, edit.value));
          expectSound(desk.bench);
          expectWrittenOnce(desk.bench);
        }
        for (let back = undo(desk); back.ok; back = undo(desk)) desk = back.value;
        expectSame(desk.bench, benchFor(circuit));
      }),
      { seed: 21, numRuns: runs },
    );
    expect(made).toBeGreaterThan(runs * 5);
  });
});

describe("joining wires to wires, one after another", () => {
  test("joins all ends in one net, parts no other net, and keeps the sum of lengths", () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const lots = lotsOf(seed);
        let bench = benchFor(SMALL);
        for (let step = 0; step < 6; step++) {
          const wire = lots.oneOf(bench.circuit.wires);
          const from = lots.oneOf(pointsOf(bench.circuit)).id;
          const edit = drawWireToWire(bench, from, wire.id, { x: whole(lots, 0, 110), y: whole(lots, 0, 80) });
          if (!edit.ok) continue;
          const next = got(perform(deskFor(bench), edit.value)).bench;
          const ids = new Set([...netOf(bench.circuit, wire.from)!.points, ...netOf(bench.circuit, from)!.points]);
          expect(netOf(next.circuit, wire.to)!.points).toEqual(expect.arrayContaining([...ids]));
          const before = netsOf(bench.circuit).filter(({ points }) => !points.some((point) => ids.has(point)));
          for (const net of before) expect(netOf(next.circuit, net.id)!.points).toEqual(net.points);
          expect(metresOf(next)).toBeCloseTo(metresOf(bench), 9);
          expect(connectorAt(next.circuit, "X1")).toEqual(connectorAt(SMALL, "X1"));
          bench = next;
        }
      }),
      { seed: 22, numRuns: 12 },
    );
  });
});

function metresOf({ circuit }: Bench): number {
  return circuit.wires.reduce((sum, { metres = 0 }) => sum + metres, 0);
}
