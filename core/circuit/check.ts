import { remember } from "../base/memo.ts";
import { checkParts } from "./checkParts.ts";
import { checkReach } from "./checkReach.ts";
import { checkSupply } from "./checkSupply.ts";
import { checkWires } from "./checkWires.ts";
import type { Circuit } from "./circuit.ts";
import type { Problem } from "./problem.ts";

export type { Problem } from "./problem.ts";

/** All problems and loose ends of a circuit, problems first; empty where the drawing is whole. */
export const problemsOf = remember((circuit: Circuit): readonly Problem[] => {
  const found = [...checkSupply(circuit), ...checkParts(circuit), ...checkWires(circuit), ...checkReach(circuit)];
  return [
    ...found.filter(({ severity }) => severity === "problem"),
    ...found.filter(({ severity }) => severity === "loose-end"),
  ];
});
