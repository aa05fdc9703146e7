import { capital } from "../base/capital.ts";
import { HANDOVER_WORDS as WORDS } from "../base/words/proof.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt, pointAt } from "../circuit/points.ts";
import type { BranchLine, BranchRow } from "../live/branch.ts";
import { type Fault, faultModes, targetOf } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";

/** Something of the circuit as its owner would call it, without "the": "middle vent switch", "joint". */
export function plainName(circuit: Circuit, id: string): string {
  const part = partAt(circuit, id);
  const connector = circuit.connectors.find((each) => each.id === id);
  if (part && part.kind === "connector") return plainLabel(circuit, connector?.label) ?? WORDS.joint;
  if (part) return partName(circuit, part);
  if (connector) {
    const owner = Object.values(connector.cavities ?? {})[0]?.replace(/\.[^.]+$/, "");
    return owner === undefined ? WORDS.aPlug : WORDS.plug(plainName(circuit, owner));
  }
  const point = pointAt(circuit, id);
  if (point?.kind === "terminal") return plainName(circuit, point.part.id);
  if (point?.kind === "cavity") return plainName(circuit, point.connector.id);
  return WORDS.aWire;
}

/** A part by its label, or by what it is; of fuses and grounds both, for their labels say what they serve and where. */
function partName(circuit: Circuit, { kind: name, label }: Part): string {
  const kind = kindOf(name);
  const title = kind?.title.toLowerCase() ?? "";
  const own = plainLabel(circuit, label);
  if (own === null) return title;
  if (name === "ground") return own.includes("ground") ? own : WORDS.groundAt(own);
  return kind?.role === "protection" && !own.toLowerCase().includes(title) ? WORDS.fuseOf(own, title) : own;
}

/** A label with a small first letter, unless it begins with a name all in capitals; null where it holds a designator. */
function plainLabel(circuit: Circuit, label: string | undefined): string | null {
  if (label === undefined || label.trim() === "" || designatorsIn(circuit, label).length > 0) return null;
  return /^[A-Z]{2}/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);
}

/** Words of a text that are names of the drawing: parts, wires, plugs and their places. */
export function designatorsIn(circuit: Circuit, text: string): readonly string[] {
  const known = new Set([...circuit.parts, ...circuit.wires, ...circuit.connectors].map(({ id }) => id));
  return text
    .split(/[\s,;:()"“”]+/)
    .map((word) => word.replace(/[.!?]+$/, ""))
    .filter((word) => known.has(word) || known.has(word.replace(/[-.][^-.]+$/, "")));
}

/** The text with every name of the drawing put as its owner would call it; "the joint X32" becomes "the roof joint". */
export function inPlainWords(circuit: Circuit, text: string): string {
  const found = [...new Set(designatorsIn(circuit, text))].sort((one, other) => other.length - one.length);
  return found.reduce((words, name) => named(words, name, plainName(circuit, nameOf(circuit, name))), text);
}

/** The text with one name replaced; a word before it that the new name holds too is not said twice. */
function named(text: string, name: string, plain: string): string {
  const words: string[] = [];
  for (const word of text.split(/(?<=\s)/)) {
    if (word.includes(name)) {
      const before = words.at(-1)?.trim().toLowerCase() ?? "";
      if (plain.split(" ").includes(before)) words.pop();
      words.push(word.replace(name, plain));
    } else words.push(word);
  }
  return words.join("");
}

function nameOf(circuit: Circuit, name: string): string {
  const isKnown = partAt(circuit, name) || pointAt(circuit, name) || circuit.connectors.some(({ id }) => id === name);
  return isKnown ? name : name.replace(/[-.][^-.]+$/, "");
}

/** What a row of a branch is to its owner: its part, joint or ground; of a wire that it is one. */
export function plainRow(circuit: Circuit, row: BranchRow): string {
  if (row.is === "wire" || row.is === "link") return WORDS.aWire;
  return row.is === "ground" ? WORDS.ground : plainName(circuit, row.part);
}

/** The same of a row that was found at fault: of a ground which one. */
export function plainFound(circuit: Circuit, row: BranchRow): string {
  return row.is === "ground" ? plainName(circuit, row.part) : plainRow(circuit, row);
}

/** What had failed, and what that did, in a sentence or two. */
export function plainCause(circuit: Circuit, faults: readonly Fault[], line: BranchLine | null): string {
  const [fault] = faults;
  const target = fault ? targetOf(circuit, fault.target) : null;
  if (!fault || !target) return "";
  if (faults.length > 1 && target.is === "cavity")
    return capital(WORDS.plugWhole(WORDS.part(plainName(circuit, target.connector))));
  const it = capital(
    target.is === "wire"
      ? wireWords(circuit, fault.target, line)
      : target.is === "cavity"
        ? WORDS.pin(plainName(circuit, target.connector))
        : WORDS.part(plainName(circuit, target.id)),
  );
  const say = WORDS.causes[fault.mode];
  if (say) return say(fault.mode === "jammed" ? it.charAt(0).toLowerCase() + it.slice(1) : it);
  if (fault.mode.startsWith("left-in-")) return WORDS.leftIn(it);
  const title = faultModes(circuit, target).find(({ mode }) => mode === fault.mode)?.title ?? fault.mode;
  return WORDS.cause(it, withoutCodes(title));
}

/** A wire by the parts that it lies between on its line. */
function wireWords(circuit: Circuit, wire: string, line: BranchLine | null): string {
  const rows = line?.rows ?? [];
  const at = rows.findIndex(({ name }) => name === wire);
  const isPlace = (row: BranchRow): boolean => row.is === "part" || row.is === "inline" || row.is === "ground";
  const from = rows.slice(0, at).reverse().find(isPlace);
  const to = rows.slice(at + 1).find(isPlace);
  return at < 0 || !from || !to ? WORDS.aWire : WORDS.wire(plainRow(circuit, from), plainRow(circuit, to));
}

/** A title of a fault without contact numbers and what the model adds: "contact burnt open". */
function withoutCodes(title: string): string {
  return title
    .split(",")[0]!
    .split(" ")
    .filter((word) => !/\d/.test(word))
    .join(" ");
}
