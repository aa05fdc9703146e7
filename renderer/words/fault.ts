import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { type Fault, faultModes, faultText, faultTitle, targetOf } from "../../core/live/fault.ts";
import type { FaultMode } from "../../core/parts/kind.ts";
import { unbroken } from "./figures.ts";

/** The ways in which what is named can fail; none where the circuit has nothing of that name. */
export function modesOf(circuit: Circuit, target: string): readonly FaultMode[] {
  const found = targetOf(circuit, target);
  return found ? faultModes(circuit, found) : [];
}

/** Whether each fault that comes and goes is there now: "W9 broken, comes and goes: away". "" where none does. */
export function comingsSaid({ circuit, faults, gone }: Bench): string {
  return faults
    .filter(({ pattern }) => pattern !== undefined)
    .map((fault) => `${unbroken(faultTitle(circuit, fault))}: ${comingWord(fault, gone)}`)
    .join("; ");
}

/** "there" or "away". */
export function comingWord(fault: Fault, gone: readonly string[]): "there" | "away" {
  return gone.includes(faultText(fault)) ? "away" : "there";
}

/** Everything that can fail, by name and in words: parts, wires and places of connectors. */
export const targetsOf = remember((circuit: Circuit): readonly { readonly id: string; readonly about: string }[] =>
  named(circuit).filter(({ id }) => modesOf(circuit, id).length > 0),
);

function named(circuit: Circuit): readonly { readonly id: string; readonly about: string }[] {
  return [
    ...circuit.parts.map(({ id, label, kind }) => ({ id, about: label ?? kind.replaceAll("-", " ") })),
    ...circuit.wires.map(({ id, from, to, colour }) => ({
      id,
      about: `wire ${colour === undefined ? "" : `${colour}, `}${from} to ${to}`,
    })),
    ...circuit.connectors.flatMap(({ id, rows, cavities }) =>
      rows
        .flat()
        .filter((cavity) => cavity !== "" && (!cavities || cavities[cavity] !== undefined))
        .map((cavity) => ({ id: `${id}-${cavity}`, about: `pin ${cavity} of ${id}` })),
    ),
  ];
}
