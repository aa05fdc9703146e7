import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { conditionText } from "../../core/live/condition.ts";
import { type Fault, faultText } from "../../core/live/fault.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { deckOf } from "./deck.ts";
import { type ReferenceVolts, solveDecks, TOLERANCES } from "./ngspice.ts";

/** Within these volts where the source resistance is below 1 kilohm, and elsewhere. */
const FIRM_VOLTS = 1e-6;
const FAINT_VOLTS = 1e-3;
const FIRM_OHMS = 1e3;
/** A circuit to be brought to a condition, with faults. */
export interface Trial {
  readonly circuit: Circuit;
  readonly condition: Condition;
  readonly faults: readonly Fault[];
}

/** What came of comparing: a line for each disagreement, and how many nodes were held against the reference. */
export interface Verdict {
  readonly disagreements: readonly string[];
  readonly nodes: number;
  /** Nodes left out since only junctions in reverse lead to them. */
  readonly faint: number;
  readonly worstFirmVolts: number;
  readonly worstFaintVolts: number;
}

/** Settles every trial, freezes it, asks the reference, and holds node volts against node volts. */
export async function compareAll(trials: readonly Trial[]): Promise<Verdict> {
  const disagreements: string[] = [];
  const settled = trials.map(({ circuit, condition, faults }) => {
    const rig = new Rig(circuit, faults);
    reach(rig, condition);
    const { converged } = rig.solver.solve();
    const name = `${circuit.title} in [${conditionText(condition)}] with [${faults.map(faultText).join(" ")}]`;
    if (!converged) disagreements.push(`${name}: not solved`);
    return { name, deck: deckOf(rig, condition.ambientC), ...readNodes(rig) };
  });
  const tally: Tally = { nodes: 0, left: 0, firm: 0, faint: 0 };
  let left: readonly { readonly trial: Settled; readonly lines: readonly string[] }[] = settled.map((trial) => ({
    trial,
    lines: [],
  }));
  for (const tolerance of TOLERANCES) {
    const solved = await solveDecks(
      left.map(({ trial }) => trial.deck.text),
      tolerance,
    );
    const found = left.map(({ trial }, index) => ({ trial, lines: compareOne(trial, solved[index] ?? null, tally) }));
    left = found.filter(({ lines }) => lines.length > 0);
  }
  disagreements.push(...left.flatMap(({ trial, lines }) => lines.map((line) => `${trial.name}: ${line}`)));
  return {
    disagreements,
    nodes: tally.nodes,
    faint: tally.left,
    worstFirmVolts: tally.firm,
    worstFaintVolts: tally.faint,
  };
}

function readNodes(rig: Rig) {
  const { nodes, nodeCount } = rig.network;
  const names: string[] = Array(nodeCount);
  for (const [name, node] of nodes) names[node] = name;
  return {
    names,
    ours: names.map((_, node) => rig.solver.volts(node)),
    isFloating: names.map((_, node) => rig.solver.isFloating(node)),
    ohms: rig.solver.sourceOhms(),
  };
}

interface Settled extends ReturnType<typeof readNodes> {
  readonly name: string;
  readonly deck: ReturnType<typeof deckOf>;
}

interface Tally {
  nodes: number;
  left: number;
  firm: number;
  faint: number;
}

/** A line for each disagreement; where there is none the nodes are tallied. */
function compareOne(
  { names, ours, isFloating, ohms, deck }: Settled,
  theirs: ReferenceVolts,
  tally: Tally,
): readonly string[] {
  if (!theirs) return ["the reference found no operating point"];
  const lines: string[] = [];
  const here: Tally = { nodes: 0, left: 0, firm: 0, faint: 0 };
  const voltsAt = (name: string): number => (name === "0" ? 0 : (theirs.get(name) ?? Number.NaN));
  for (const { a, b, least, most } of deck.pieces) {
    const volts = voltsAt(a) - voltsAt(b);
    if (!(volts > least - FIRM_VOLTS && volts < most + FIRM_VOLTS))
      lines.push(`a regulated source is not where it was frozen: ${volts} V`);
  }
  deck.names.forEach((name, node) => {
    if (!deck.isJoined[node] && !isFloating[node])
      lines.push(`${names[node]} hangs on nothing and is not told to float`);
    if (name === null) return;
    if (isFloating[node]) lines.push(`${names[node]} is told to float and does not`);
    if (deck.isFaint[node]) {
      here.left++;
      return;
    }
    here.nodes++;
    const off = Math.abs(voltsAt(name) - ours[node]!);
    const isFirm = ohms[node]! < FIRM_OHMS;
    if (isFirm) here.firm = Math.max(here.firm, off);
    else here.faint = Math.max(here.faint, off);
    if (!(off <= (isFirm ? FIRM_VOLTS : FAINT_VOLTS))) {
      lines.push(`${names[node]} is ${ours[node]} V, the reference says ${voltsAt(name)} V (${ohms[node]} ohm)`);
    }
  });
  if (lines.length > 0) return lines.slice(0, 5);
  tally.nodes += here.nodes;
  tally.left += here.left;
  tally.firm = Math.max(tally.firm, here.firm);
  tally.faint = Math.max(tally.faint, here.faint);
  return lines;
}
