import type { GridUnits, Millimetres } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { chassisMarks } from "../drawing/glyph.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { boundsOfAll } from "../drawing/measure.ts";
import { gridUnitsOf, millimetresOf } from "../drawing/scale.ts";
import { arc, box, circle, filledBox, line, terminalRing } from "../drawing/shapes.ts";
import type { BranchPart, BranchRow } from "../live/branch.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Kind, Look, PartView, Pose } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";

/** A part drawn on a line that comes from above and goes on below: its middle at 0, 0, where the line stops and goes on. */
export interface StraightSymbol {
  readonly marks: readonly Mark[];
  readonly top: Millimetres;
  readonly bottom: Millimetres;
  /** A letter for its middle, as a motor has its M; empty where the marks say all. */
  readonly sign: string;
}

/** Half the height of a drawn body, and half the way between the rings of a contact. */
const HALF: Millimetres = 3;
const CONTACT: Millimetres = 2.5;
const MOST_WIDE: Millimetres = 7.4;

/** The symbol of a row as the part stands now, with its rest behind it. A wire has none. */
export function straightSymbol(circuit: Circuit, row: BranchRow, look: Look): StraightSymbol {
  if (row.is === "wire") return none();
  if (row.is === "link") return flag();
  if (row.is === "splice")
    return { marks: [circle("joint", 0, 0, gridUnitsOf(0.9), true)], top: 0, bottom: 0, sign: "" };
  if (row.is === "ground") return ground(row);
  if (row.is === "inline") return joint(look);
  const part = partAt(circuit, row.part);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return body("");
  const view = viewOf(kind, part, circuit.nominalVolts);
  if (row.contacts.length > 0 && (kind.role === "control" || kind.role === "electronics")) return contact(row);
  if (row.isLoad && kind.role === "control") return body("");
  return ownSymbol(kind, view, row, look) ?? plainSymbol(kind, view);
}

function none(): StraightSymbol {
  return { marks: [], top: 0, bottom: 0, sign: "" };
}

function flag(): StraightSymbol {
  const [half, tip] = [gridUnitsOf(1.5), gridUnitsOf(0.8)];
  const pentagon: Mark = {
    ...line("symbol-fine", -half, -tip, half, -tip, half, tip / 2, 0, tip * 1.6, -half, tip / 2),
    closed: true,
  } as Mark;
  return { marks: [pentagon], top: -0.8, bottom: 1.3, sign: "" };
}

/** A stud going into its body; where the line comes back out of the body at another stud, the sign stands on its head. */
function ground({ entry }: BranchPart): StraightSymbol {
  const marks = chassisMarks({ x: 0, y: 0 });
  if (entry.point !== null) return { marks, top: 0, bottom: 2.1, sign: "" };
  return { marks: marks.map((mark) => moved(mark, { x: 0, y: 0 }, 1, -1)), top: -2.1, bottom: 0, sign: "" };
}

function joint(look: Look): StraightSymbol {
  if (look === "na") {
    const [wide, high] = [gridUnitsOf(1.5), gridUnitsOf(1.3)];
    const chevron = (y: GridUnits) => line("symbol", -wide, y - high, 0, y, wide, y - high);
    return { marks: [chevron(0), chevron(gridUnitsOf(1.3))], top: 0, bottom: 1.3, sign: "" };
  }
  const pin = filledBox("solid", gridUnitsOf(-0.55), gridUnitsOf(-0.5), gridUnitsOf(1.1), gridUnitsOf(2.3));
  return { marks: [arc("symbol", 0, 0, gridUnitsOf(1.7), 180, 360), pin], top: -1.7, bottom: 1.8, sign: "" };
}

/** Two rings and a bar: straight and bold where it is closed; its place at rest behind it where it stands elsewhere. */
function contact({ isClosed, isRest }: BranchPart): StraightSymbol {
  const at = gridUnitsOf(CONTACT);
  const [aside, up] = [gridUnitsOf(2.6), gridUnitsOf(-1.5)];
  const rest =
    isRest === (isClosed === true)
      ? []
      : [isRest ? line("contact-rest", 0, at, 0, -at) : line("contact-rest", 0, at, aside, up)];
  const now = isClosed ? line("contact-now", 0, at, 0, -at) : line("contact-now", 0, at, -aside * 0.7, up);
  return { marks: [...rest, now, terminalRing(0, -at), terminalRing(0, at)], top: -CONTACT, bottom: CONTACT, sign: "" };
}

/** What has no symbol that fits on a line: a lamp's cross, a motor's M, else a box with the letter of its designators. */
function plainSymbol(kind: Kind, view: PartView): StraightSymbol {
  const laws = kind.model(view).map(({ law }) => law.law);
  if (laws.includes("motor")) return round("M");
  if (!laws.includes("lamp")) return body(kind.letter);
  const reach = gridUnitsOf(HALF * Math.SQRT1_2);
  const cross = [line("symbol", -reach, -reach, reach, reach), line("symbol", -reach, reach, reach, -reach)];
  const lamp = round("");
  return { ...lamp, marks: [...lamp.marks, ...cross] };
}

function round(sign: string): StraightSymbol {
  return { marks: [circle("symbol", 0, 0, gridUnitsOf(HALF))], top: -HALF, bottom: HALF, sign };
}

function body(sign: string): StraightSymbol {
  const [half, high] = [gridUnitsOf(2.6), gridUnitsOf(HALF)];
  return { marks: [box("symbol", -half, -high, 2 * half, 2 * high)], top: -HALF, bottom: HALF, sign };
}

// ---------------------------------------------------------------- a kind's own symbol

/** The kind's own symbol, where the two terminals passed lie one above the other; null where they do not. */
function ownSymbol(
  kind: Kind,
  view: PartView,
  { terminals, state, isClosed }: BranchPart,
  look: Look,
): StraightSymbol | null {
  const closed = isClosed === false ? [] : kind.closed(view, state === "" ? kind.start : state, atRest(view));
  const pose: Pose = { closed: new Set(closed), rest: new Set(closed), state };
  const shape = kind.symbol(view, pose, look);
  const [upper, lower] = [shape.terminals[terminals[0]], shape.terminals[terminals[1]]];
  if (!upper || !lower || Object.keys(shape.terminals).length !== 2 || upper.x !== lower.x) return null;
  const inner = shape.marks.filter((mark) => mark.mark !== "text" && !isLead(mark, upper, lower));
  const bounds = boundsOfAll(inner);
  if (!bounds) return null;
  const high = millimetresOf(bounds.bottom - bounds.top);
  const wide = millimetresOf(2 * Math.max(upper.x - bounds.left, bounds.right - upper.x));
  const scale = Math.min(1, (2 * HALF) / high, MOST_WIDE / wide);
  const middle = { x: upper.x, y: (bounds.top + bounds.bottom) / 2 };
  const flip = upper.y > lower.y ? -1 : 1;
  const half = (high * scale) / 2 - 0.15;
  const sign = shape.marks.find((mark) => mark.mark === "text" && mark.points >= 10 && mark.text.length <= 2);
  return {
    marks: inner.map((mark) => moved(mark, middle, scale, flip)),
    top: -half,
    bottom: half,
    sign: sign?.mark === "text" ? sign.text : "",
  };
}

function atRest(view: PartView) {
  const positions = Object.fromEntries(view.controls.map(({ name, positions: [rest] }) => [name, rest?.name ?? ""]));
  return { positions, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: view.nominalVolts };
}

/** The straight line from a terminal to the body, which the line of the branch takes the place of. */
function isLead(mark: Mark, ...terminals: readonly Spot[]): boolean {
  if (mark.mark !== "line" || mark.closed || mark.spots.length !== 2) return false;
  const [one, other] = mark.spots as readonly [Spot, Spot];
  return one.x === other.x && terminals.some(({ x, y }) => one.x === x && (one.y === y || other.y === y));
}

function moved(mark: Mark, middle: Spot, scale: number, flip: 1 | -1): Mark {
  const spot = ({ x, y }: Spot): Spot => ({ x: (x - middle.x) * scale, y: (y - middle.y) * scale * flip });
  switch (mark.mark) {
    case "line":
      return { ...mark, spots: mark.spots.map(spot) };
    case "circle":
      return { ...mark, at: spot(mark.at), radius: mark.radius * scale };
    case "arc": {
      const [from, to] = flip === 1 ? [mark.from, mark.to] : [-mark.to, -mark.from];
      return { ...mark, at: spot(mark.at), radius: mark.radius * scale, from, to };
    }
    case "box":
    case "swatch": {
      const [width, height] = [mark.width * scale, mark.height * scale];
      const at = spot(flip === 1 ? mark.at : { x: mark.at.x, y: mark.at.y + mark.height });
      return { ...mark, at, width, height };
    }
    case "text":
      return { ...mark, at: spot(mark.at) };
  }
}
