import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Control, Part, Position } from "../parts/kind.ts";
import { wordId } from "./wordId.ts";

/** A line of a table written as text, as it was read. */
export interface TableLine {
  readonly text: string;
  /** The control that it says; its name is empty where the line names none. Null where it cannot be read. */
  readonly control: Control | null;
  /** Why it cannot: `table-name`, `table-join`, `table-label`, or null. */
  readonly wrong: Refusal | null;
}

type Pair = Position["joins"][number];

/** Terminals that are joined stand with a dash between, two or more: 4-6, A1-31-P. */
const JOIN = /^[^\s\u2013-]+(?:[\u2013-][^\s\u2013-]+)+$/u;
/** Words after the name of a position that goes back when it is let go: to rest, or "held to on". */
const HELD = "held";
const TO = "to";

/**
 * Reads continuity tables that are written as text: one control a line, its name before a colon unless it is the only one;
 * then its positions, rest first, parted by semicolons, each its name, "held" where it springs back ("held to on" where not
 * to rest), and the terminals that it joins: `Left: rest 4-1 5-2; open held 4-6 5-2`. Every line comes back, with what is wrong with it.
 */
export function tableText(text: string): readonly TableLine[] {
  const lines = text.split(/\r?\n/).flatMap((line) => (line.trim() === "" ? [] : [line.trim()]));
  const names: { id: string }[] = [];
  return lines.map((line): TableLine => {
    const [, label = "", rest = ""] = /^(?:([^:]*):)?(.*)$/u.exec(line) ?? [];
    const called = label.trim();
    if (lines.length > 1 && called === "") return wrongLine(line, refuse("table-label", { text: line }).refusal);
    const positions = positionsIn(rest);
    if (!positions.ok) return wrongLine(line, positions.refusal);
    const name = called === "" ? "" : wordId(names, called, "control");
    names.push({ id: name });
    const isPlain = called === "" || called === name;
    return {
      text: line,
      control: { name, ...(!isPlain && { label: called }), positions: positions.value },
      wrong: null,
    };
  });
}

/** The tables of a part as such text, one control a line; empty for a part that has none. */
export function tableWritten(part: Part): string {
  const controls = kindOf(part.kind)?.controls(part) ?? [];
  return controls.map((control) => `${headOf(control)}${tableOf(control)}`).join("\n");
}

function wrongLine(text: string, wrong: Refusal): TableLine {
  return { text, control: null, wrong };
}

function positionsIn(text: string): Outcome<readonly Position[]> {
  const pieces = text.split(";").flatMap((piece) => (piece.trim() === "" ? [] : [piece.trim()]));
  if (pieces.length === 0) return refuse("table-name", { text: text.trim() });
  const positions: Position[] = [];
  for (const piece of pieces) {
    const position = positionIn(piece, positions[0]?.name);
    if (!position.ok) return position;
    positions.push(position.value);
  }
  return ok(positions);
}

/** The first word is the name's, even where it has a dash; what follows the first join must be joins. */
function positionIn(text: string, rest: string | undefined): Outcome<Position> {
  const words = text.split(/\s+/);
  const at = words.findIndex((word, index) => index > 0 && JOIN.test(word));
  const joins = at < 0 ? [] : words.slice(at);
  const odd = joins.find((word) => !JOIN.test(word));
  if (odd !== undefined) return refuse("table-join", { text: odd });
  const { name, back } = heldIn(at < 0 ? words : words.slice(0, at));
  if (at < 0 && JOIN.test(name)) return refuse("table-name", { text });
  const springsBackTo = back === "" ? rest : back;
  return ok({
    name,
    ...(springsBackTo !== undefined && { springsBackTo }),
    joins: joins.flatMap((word) => pairsOf(word.split(/[\u2013-]/u))),
  });
}

/** The name of a position, and what it springs back to: the empty word is rest. */
function heldIn(words: readonly string[]): { readonly name: string; readonly back?: string } {
  const at = words.findIndex((word, index) => index > 0 && word.toLowerCase() === HELD);
  if (at < 0) return { name: words.join(" ") };
  const [, to = "", ...goal] = words.slice(at);
  const isPlain = to === "" || (to.toLowerCase() === TO && goal.length > 0);
  return isPlain ? { name: words.slice(0, at).join(" "), back: goal.join(" ") } : { name: words.join(" ") };
}

function pairsOf(terminals: readonly string[]): readonly Pair[] {
  return terminals.slice(1).map((terminal, index): Pair => [terminals[index]!, terminal]);
}

function headOf({ name, label }: Control): string {
  return name === "" ? "" : `${label ?? name}: `;
}

function tableOf({ positions }: Control): string {
  return positions
    .map(({ name, joins, springsBackTo: back }) => {
      const held = back === undefined ? [] : back === positions[0]?.name ? [HELD] : [HELD, TO, back];
      return [name, ...held, ...joins.map(([a, b]) => `${a}-${b}`)].join(" ");
    })
    .join("; ");
}
