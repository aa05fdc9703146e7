import { PART_STATE_WORDS, STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { partAt } from "../../core/circuit/points.ts";
import type { BranchControl, BranchPart, BranchWire } from "../../core/live/branch.ts";
import type { Tap } from "../../core/live/branchTaps.ts";
import { aboutPart } from "../../core/paper/straightWords.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { positionTitle } from "../words/condition.ts";
import { ampsText, signed } from "../words/figures.ts";

/** How a load is listed: "M3, Middle vent motor". */
export function loadTitle(circuit: Circuit, id: string): string {
  return `${id}, ${aboutPart(circuit, id)}`;
}

/** The terminals passed: "6 to 4"; empty where there is only one way through, as in a fuse or a battery. */
export function terminalsText(circuit: Circuit, { is, part, terminals: [from, to] }: BranchPart): string {
  const role = kindOf(partAt(circuit, part)?.kind ?? "")?.role;
  if (is !== "part" || from === "" || to === "" || role === "protection" || role === "source") return "";
  return from === to ? `pin ${from}` : `${from} to ${to}`;
}

/** Where the part stands: "Lock-out off", "held open", "pulled in", "open: stuck". */
export function standingText({ controls, state, isClosed }: BranchPart): string {
  const positions = controls.map(({ name, position, isHeld }) => {
    const words = `${isHeld ? "held " : ""}${position.replaceAll("-", " ")}`;
    return name === "" ? (isHeld ? words : positionTitle(words)) : `${name} ${words}`;
  });
  const said = [...positions, PART_STATE_WORDS[state] ?? ""].filter((word) => word !== "");
  return [...said, isClosed === false ? "open now" : ""].filter((word) => word !== "").join(", ");
}

/** Volts lost over a row: "0.06 V lost"; empty for less than a hundredth, and where it floats. */
export function dropText({ entry, exit }: Pick<BranchPart, "entry" | "exit">): string {
  if (entry.volts === null || exit.volts === null) return "";
  const drop = Math.abs(entry.volts - exit.volts);
  return drop < 0.005 ? "" : `${signed(drop, 2)}\u00A0V`;
}

/** A wire that carries this much more than the load takes is shared; less is a module's input. */
const SHARED = 1.02;

/** Amps of a wire where they are not the load's alone: "3.1 A, shared"; "no current" where a fault stops it. */
export function wireAmpsText({ goodAmps, share, amps }: BranchWire): string {
  if (goodAmps > 0 && Math.abs(amps) < 0.001) return "no current";
  return goodAmps > share * SHARED ? `${ampsText(Math.abs(amps))}, shared` : "";
}

/** What a control is and how it stands: "Coil: pulled in, 139 mA", "Input rain must be high: powered". */
export function controlText({ sort, what, wanted, state, pin, goodAmps }: BranchControl): string {
  if (sort === "coil") {
    const amps = goodAmps > 0 ? `, ${ampsText(goodAmps)}` : ", no current";
    return `${positionTitle(what)} ${PART_STATE_WORDS[state] ?? state.replaceAll("-", " ")}${amps}`;
  }
  const name = sort === "input" ? `Input ${what} must be ${wanted}` : `${positionTitle(sort)} ${what}`;
  return `${name}: ${STATE_WORDS[pin.state]}`;
}

/** How what hangs on a place begins: by which wire, or inside the part. */
export function tapLead({ wire }: Tap): string {
  return wire === null ? "also" : `${wire} to`;
}
