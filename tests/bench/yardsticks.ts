import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { LuDecomposition, Matrix } from "ml-matrix";
import type { Rig } from "../../core/live/rig.ts";
import type { Element } from "../../core/solve/element.ts";
import { emptyFactor, refactor, touchAll } from "../../core/solve/factor.ts";
import { inverseDiagonal } from "../../core/solve/inverse.ts";
import { chordAt, tableOf } from "../../core/solve/laws.ts";
import { deckOf } from "../reference/deck.ts";
import { INSTALL, TOLERANCES } from "../reference/ngspice.ts";
import { presentElements } from "../reference/present.ts";
import { medianMs } from "./measure.ts";
import { inRoom } from "./room.ts";

/** Ohms of an open contact in a deck that is timed. */
const OPEN_OHMS = 1e9;

/**
 * The deck of a rig as a general solver is given it: whole, an open contact a resistor of a gigohm. Where answers are compared what
 * is open is left out, with all behind it; but a solver that is to answer for every switch has it all.
 */
function wholeDeckOf(rig: Rig): string {
  const present = presentElements(rig);
  const whole = rig.network.elements.map(({ element: { a, b } }, index): Element | null =>
    rig.isOpen[index] === 1 ? { law: "resistor", a, b, ohms: OPEN_OHMS } : present[index]!,
  );
  return deckOf(rig, undefined, whole).text;
}

/** Runs a deck by a process of the reference. Throws one line where that is missing. */
function runDeck(file: string): void {
  const { error } = spawnSync("ngspice", ["-b", file], { stdio: "ignore" });
  if (error) throw new Error(INSTALL);
}

/** Milliseconds of one process of the reference for one operating point of this circuit, from start to end: a median. */
export function referenceMs(rig: Rig, times = 15): number {
  return inRoom((room) => {
    const file = join(room, "bench.cir");
    writeFileSync(file, `${wholeDeckOf(rig)}.options ${TOLERANCES[0]} itl1=500\n.op\n.end\n`);
    return medianMs(() => runDeck(file), { times, mostMs: 4_000, warmMs: 0 });
  });
}

/** Operating points that the reference is asked for in one process. */
const ASKED = 40;

/**
 * Milliseconds of one operating point of the reference in a process that has the circuit already: a resistor is altered and
 * all solved again. What a process takes that is asked for none is left out.
 */
export function inProcessMs(rig: Rig): number {
  return inRoom((room) => {
    const text = wholeDeckOf(rig);
    const [, altered, ohms] = /^R(\d+) \S+ \S+ (\S+)$/m.exec(text)!;
    const spent = (times: number): number => {
      const asks = Array.from(
        { length: times },
        (_, n) => `alter R${altered} = ${Number(ohms) * (n % 2 === 0 ? 2 : 1)}\nop`,
      );
      const file = join(room, `${times}.cir`);
      const control = [".control", ...asks, "quit", ".endc"].join("\n");
      writeFileSync(file, `${text}.options ${TOLERANCES[0]} itl1=500\n${control}\n.end\n`);
      return medianMs(() => runDeck(file), {
        times: 5,
        mostMs: 6_000,
        warmMs: 0,
      });
    };
    const none = spent(0);
    return (spent(ASKED) - none) / ASKED;
  });
}

/** Siemens of every element as it stands. */
function siemensOf(rig: Rig): Float64Array {
  const { elements } = rig.network;
  const table = tableOf(elements.map(({ element }) => element));
  return Float64Array.from(elements, (_, e) =>
    rig.isOpen[e] ? 0 : chordAt(table, e, rig.solver.voltsAcross(e), true),
  );
}

/** Milliseconds of one dense LU factorisation of the contracted nodal matrix. */
export function denseMs(rig: Rig): number {
  const { unknowns, aOf, bOf, placeOf } = rig.solver.pattern;
  const matrix = Matrix.zeros(unknowns, unknowns);
  const add = (row: number, column: number, siemens: number): void => {
    if (row >= 0 && column >= 0) matrix.set(row, column, matrix.get(row, column) + siemens);
  };
  siemensOf(rig).forEach((siemens, e) => {
    const [a, b] = [aOf[e]!, bOf[e]!];
    if (placeOf[e]! < 0) return;
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
  });
  return medianMs(() => void new LuDecomposition(matrix), { times: 40, mostMs: 3_000 });
}

/** Milliseconds of one full numeric factorisation of our own. */
export function refactorMs(rig: Rig): number {
  const { pattern } = rig.solver;
  const factor = emptyFactor(pattern);
  const siemens = siemensOf(rig);
  let scale = 2;
  // What has not changed is not factored again: so everything doubles, and is halved the next time.
  const before = (): void => {
    for (let e = 0; e < siemens.length; e++) siemens[e] = siemens[e]! * scale;
    scale = 1 / scale;
    touchAll(factor);
  };
  return medianMs(() => refactor(pattern, factor, siemens), { times: 3_000, mostMs: 1_000, before });
}

/** Milliseconds of the source ohms of all nodes from a factor at hand. */
export function inverseMs(rig: Rig): number {
  const { pattern } = rig.solver;
  const factor = emptyFactor(pattern);
  refactor(pattern, factor, siemensOf(rig));
  return medianMs(() => inverseDiagonal(pattern, factor), { times: 3_000, mostMs: 1_000 });
}
