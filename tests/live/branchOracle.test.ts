import { describe, expect, test } from "vitest";
import type { Circuit, FunctionCheck } from "../../core/circuit/circuit.ts";
import { type Branch, branchOf, checksOf, loadsOf } from "../../core/live/branch.ts";
import { judge } from "../../core/live/judge.ts";
import { liveOf } from "../../core/live/live.ts";
import { SAMPLE_NAMES as SAMPLES, sample } from "../samples/onTheBench.ts";

/** Loads of each sample that are tried: every so many of them, so that the whole stays cheap. */
const EACH = 3;

/** Everything that a branch draws: parts and wires of its lines, and of the lines of what controls it. */
function drawn({ lines, controls }: Branch): ReadonlySet<string> {
  const rows = [...lines, ...controls.flatMap((control) => control.lines)].flatMap((line) => line.rows);
  const named = rows.flatMap((row): readonly string[] => {
    if (row.is === "wire") return [row.wire];
    return row.is === "link" ? row.parts : [row.part];
  });
  return new Set([...named, ...controls.map(({ part }) => part)]);
}

/** The circuit with these wires cut out. */
function without(circuit: Circuit, wires: ReadonlySet<string>): Circuit {
  return { ...circuit, wires: circuit.wires.filter(({ id }) => !wires.has(id)) };
}

/** The wires that end on a part, at its terminals or at the plugs on them. */
function wiresOn(circuit: Circuit, part: string): ReadonlySet<string> {
  const plugs = circuit.connectors.flatMap(({ id, cavities = {} }) =>
    Object.entries(cavities).flatMap(([cavity, carries]) =>
      carries.startsWith(`${part}.`) ? [`${id}-${cavity}`] : [],
    ),
  );
  const isOn = (point: string) => point.startsWith(`${part}.`) || point.startsWith(`${part}-`) || plugs.includes(point);
  return new Set(circuit.wires.flatMap(({ id, from, to }) => (isOn(from) || isOn(to) ? [id] : [])));
}

/** Whether the load still does what the check wants with these wires gone: the whole circuit solved anew. */
function works(circuit: Circuit, check: FunctionCheck, gone: ReadonlySet<string>): boolean {
  const live = liveOf(without(circuit, gone), check.condition);
  return judge(check, live.parts.get(check.load)) === "works";
}

describe.each(SAMPLES)("The straight branches of sample %s", (name) => {
  const circuit = sample(name);
  const tried = loadsOf(circuit).filter((_, index) => index % EACH === 0);
  const checks = tried.flatMap((load) => checksOf(circuit, load).slice(0, 1));

  test("draw every wire and part without which their load does not work, and none that is idle", () => {
    for (const check of checks) {
      const made = branchOf(circuit, { load: check.load, condition: check.condition });
      if (!made.ok) throw new Error(check.id);
      const on = drawn(made.value);
      const cuts = [
        ...circuit.wires.map(({ id }) => ({ id, gone: new Set([id]) })),
        ...circuit.parts.map(({ id }) => ({ id, gone: wiresOn(circuit, id) })),
      ];
      const needed = cuts.filter(({ gone }) => !works(circuit, check, gone)).map(({ id }) => id);
      expect({ check: check.id, missing: needed.filter((id) => !on.has(id)) }).toEqual({
        check: check.id,
        missing: [],
      });
      // A wire that may go is one beside which another way takes over, through what the branch does not draw.
      const idle = made.value.lines[0]!.rows.filter((row) => {
        if (made.value.lines.length > 1 || row.is !== "wire" || needed.includes(row.wire)) return false;
        const cut = without(circuit, new Set([row.wire]));
        const other = branchOf(cut, { load: check.load, condition: check.condition });
        return !other.ok || [...drawn(other.value)].every((id) => on.has(id));
      });
      expect({ check: check.id, idle: idle.map(({ name }) => name) }).toEqual({ check: check.id, idle: [] });
    }
  });
});
