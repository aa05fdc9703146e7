import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Outcome } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { type Bench, benchFor } from "../../../core/edit/bench.ts";
import { changeTitle } from "../../../core/edit/commands/changeTitle.ts";
import { drawWire } from "../../../core/edit/commands/drawWire.ts";
import { moveThings } from "../../../core/edit/commands/moveThings.ts";
import { removePage } from "../../../core/edit/commands/removePage.ts";
import { removeThings } from "../../../core/edit/commands/removeThings.ts";
import { resizePage } from "../../../core/edit/commands/resizePage.ts";
import { apply, type Edit } from "../../../core/edit/edit.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { ROOT } from "../machine.ts";

/** Room for the feeds left of the vents: grid units, and millimetres of the page. */
const FEEDS = 36;
const PAGE = { width: 480, height: 297 } as const;

/**
 * The roof vents of the first sample on one page, as a person at the bench redraws them: feeds, panel, four switches, four
 * motors, ground; without the rain closer, past which the wire of the rear vent now goes straight.
 */
export function roofVents(): Circuit {
  const sample = readCircuit(readFileSync(join(ROOT, "samples", "1-roof-vents.circuit.json")));
  if (!sample.ok) throw new Error("the first sample cannot be read");
  const { parts, placement } = sample.value;
  const on = (page: string): string[] => parts.flatMap(({ id }) => (placement.parts[id]?.page === page ? [id] : []));
  const links = parts.flatMap(({ id, kind }) => (kind === "page-link" ? [id] : []));
  const left = [...links, ...on("p3"), ...on("p4"), "F5"];
  const vents = on("p2").filter((id) => !left.includes(id));
  let bench = benchFor(sample.value);
  const make = (command: (bench: Bench) => Outcome<Edit>): void => {
    bench = made(bench, command);
  };
  make((now) => changeTitle(now, "Roof vents, redrawn"));
  make((now) => removeThings(now, left));
  make((now) => removePage(now, "p3"));
  make((now) => removePage(now, "p4"));
  make((now) => resizePage(now, "p2", PAGE.width, PAGE.height));
  make((now) => moveThings(now, vents, FEEDS, 0));
  make((now) => removePage(now, "p1", "p2"));
  make((now) => drawWire(now, "K1.87", "F4.1", { colour: "RD", mm2: 6 }));
  make((now) => drawWire(now, "S2.D2", "X6-2", { colour: "GY/VT", mm2: 1.5 }));
  return bench.circuit;
}

function made(bench: Bench, command: (bench: Bench) => Outcome<Edit>): Bench {
  const edit = command(bench);
  if (!edit.ok) throw new Error(`refused: ${edit.refusal.code}`);
  const after = apply(bench, edit.value);
  if (!after.ok) throw new Error(`refused: ${after.refusal.code}`);
  return after.value.bench;
}
