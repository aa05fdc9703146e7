import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import type { Wire } from "./circuit.ts";
import { ListsAgain } from "./sheetLists.ts";
import { terminalKey } from "./sheetPage.ts";
import { isPlugApart } from "./sheetPlugs.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

/** Marks of a symbol as it stands, by the states of its leads. */
const marksKnown = remember((_part: SheetPart) => new Map<string, readonly Mark[]>());

/**
 * The marks of a symbol, each lead from a terminal in the state of the wire that ends there, so that a wire is seen up
 * to the part that it feeds. Behind a plug that is apart, and without live state, leads are ink. The same part with the
 * same states gives the same marks.
 */
function symbolMarks(setup: SheetSetup, part: SheetPart): readonly Mark[] {
  const states = wiredLeads(part, setup).map((wires) => stateOf(setup, wires));
  const known = marksKnown(part);
  const key = states.join(" ");
  const marks = known.get(key) ?? colouredLeads(part, states);
  known.set(key, marks);
  return marks;
}

/** A symbol as it is drawn: its bodies, which lie under the wires, and all else of it, over them. */
interface DrawnSymbol {
  readonly bodies: readonly Mark[];
  readonly others: readonly Mark[];
}

/** The symbols of one page at one sight as they were last drawn: the same until the part or a wire at it is another one. */
export class SymbolMemory {
  private parts: readonly SheetPart[] = [];
  private apart: readonly string[] = [];
  private symbols: readonly DrawnSymbol[] = [];
  private readonly bodies = new ListsAgain<DrawnSymbol, Mark>();
  private readonly others = new ListsAgain<DrawnSymbol, Mark>();

  /** The marks of all symbols; `wires` are those that are others than last time, null where all may be. */
  draw(setup: SheetSetup, wires: readonly Wire[] | null): DrawnSymbol {
    const { parts, live, spots } = setup;
    const apart = live?.condition.apart ?? [];
    const isPlugged = apart.length === 0 && this.apart.length === 0;
    const touched = new Set(wires?.flatMap(({ from, to }) => [spots.get(from)?.part, spots.get(to)?.part]));
    const isKnown = (part: SheetPart, index: number) =>
      wires !== null && isPlugged && part === this.parts[index] && !touched.has(part.part.id);
    const symbols = parts.map((part, index) =>
      isKnown(part, index) ? this.symbols[index]! : bodiesApart(symbolMarks(setup, part)),
    );
    this.parts = parts;
    this.apart = apart;
    this.symbols = symbols;
    return {
      bodies: this.bodies.join(symbols, ({ bodies }) => bodies),
      others: this.others.join(symbols, ({ others }) => others),
    };
  }
}

const bodiesApart = remember((marks: readonly Mark[]): DrawnSymbol => {
  const isBody = (mark: Mark) => "role" in mark && mark.role === "body";
  return { bodies: marks.filter(isBody), others: marks.filter((mark) => !isBody(mark)) };
});

function colouredLeads({ part: { id: of }, shape }: SheetPart, states: readonly (WireState | null)[]): readonly Mark[] {
  const leads = Object.values(shape.terminals).flatMap((spot, index) => {
    const state = states[index] ?? null;
    return state === null ? [] : [{ spot, state }];
  });
  return shape.marks.map((mark): Mark => {
    if (mark.mark !== "line" || mark.role !== "symbol" || mark.spots.length !== 2 || mark.closed) {
      return { ...mark, of };
    }
    const ends = leads.find(({ spot }) => mark.spots.some((end) => isSame(end, spot)));
    return { ...mark, of, ...(ends && { role: `wire-${ends.state}` as const }) };
  });
}

function isSame(one: Spot, other: Spot): boolean {
  return Math.abs(one.x - other.x) < 1e-9 && Math.abs(one.y - other.y) < 1e-9;
}

type WireEnds = readonly { readonly wire: Wire; readonly end: 0 | 1 }[];

/** For the wires of a page: those at the leads of each part that they were asked for. */
const leadsKnown = remember((_wiresAt: SheetSetup["wiresAt"]) => new Map<SheetPart, readonly WireEnds[]>());

/** The wires at each terminal of a part, in the order of the terminals of its symbol. */
function wiredLeads(part: SheetPart, { wiresAt }: SheetSetup): readonly WireEnds[] {
  const known = leadsKnown(wiresAt).get(part);
  if (known !== undefined) return known;
  const found = Object.keys(part.shape.terminals).map((name) => wiresAt.get(terminalKey(part.part.id, name)) ?? []);
  leadsKnown(wiresAt).set(part, found);
  return found;
}

/** The state of the first of the wires; null where there is none, or its plug is apart. */
function stateOf(setup: SheetSetup, wires: WireEnds): WireState | null {
  for (const { wire, end } of wires) {
    if (isPlugApart(setup, end === 0 ? wire.from : wire.to)) continue;
    const state = setup.live?.wires.get(wire.id)?.state[end];
    if (state !== undefined) return state;
  }
  return null;
}
