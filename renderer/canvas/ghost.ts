import type { Circuit, PartPlace } from "../../core/circuit/circuit.ts";
import { partsUnder } from "../../core/circuit/overlap.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { assembly } from "../../core/edit/assemblies.ts";
import { arrivingOf, clearShift } from "../../core/edit/landing.ts";
import { firstPart } from "../../core/edit/newPart.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Look } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";
import { assemblyMarks } from "../draw/assemblyMarks.ts";
import type { StandsOn } from "./standsOn.ts";
import type { Dropping } from "./tool.ts";

/** What would be put on the drawing, before it is there. */
export interface Ghost {
  /** Where its top left would be put, grid units. */
  readonly at: Spot;
  readonly marks: readonly Mark[];
  /** From where its marks are to where they are seen, grid units. */
  readonly shift: Spot;
  readonly standsOn: readonly StandsOn[];
}

interface Wanted<T extends Dropping = Dropping> {
  readonly circuit: Circuit;
  readonly look: Look;
  readonly page: string;
  readonly tool: T;
  /** Where its middle is wanted, grid units. */
  readonly at: Spot;
}

/** What a tool would place with its middle at a spot, terminals on whole grid points; null for a kind that is not known. */
export function ghostOf({ tool, ...wanted }: Wanted): Ghost | null {
  return tool.is === "part" ? partGhost({ ...wanted, tool }) : assemblyGhost({ ...wanted, tool });
}

function partGhost({ circuit, look, page, tool, at }: Wanted<Extract<Dropping, { is: "part" }>>): Ghost | null {
  const kind = kindOf(tool.kind);
  if (!kind) return null;
  const view = viewOf(kind, firstPart(kind, kind.letter), circuit.nominalVolts);
  const shape = kind.symbol(view, restPose(kind, view), look);
  const isLying = tool.turn === 90 || tool.turn === 270;
  const [width, height] = isLying ? [shape.height, shape.width] : [shape.width, shape.height];
  const place: PartPlace = {
    page,
    x: Math.round(at.x - width / 2),
    y: Math.round(at.y - height / 2),
    ...(tool.turn !== 0 && { turn: tool.turn }),
    ...(tool.flip && { flip: true }),
  };
  const { marks, outline: box } = placeSymbol(shape, place);
  const others = partsUnder(circuit, page, box);
  return { at: place, marks, shift: { x: 0, y: 0 }, standsOn: others.length > 0 ? [{ box, others }] : [] };
}

/** An assembly is shown where it would land: beside what stands at the spot. */
function assemblyGhost({ circuit, look, page, tool, at }: Wanted<Extract<Dropping, { is: "assembly" }>>): Ghost {
  const marks = assemblyMarks(tool.assembly, circuit.nominalVolts, look);
  const { left, top, right, bottom } = boundsOfAll(marks)!;
  const wanted = { x: Math.round(at.x - (left + right) / 2), y: Math.round(at.y - (top + bottom) / 2) };
  const landing = { ...wanted, pageOf: () => page };
  const [dx, dy] = clearShift(circuit, arrivingOf(assembly(tool.assembly, circuit.nominalVolts), landing));
  const there = { x: wanted.x + dx, y: wanted.y + dy };
  return { at: there, marks, shift: there, standsOn: [] };
}
