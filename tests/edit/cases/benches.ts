import { type Bench, benchFor } from "../../../core/edit/bench.ts";
import { healFault } from "../../../core/edit/commands/healFault.ts";
import { letGo } from "../../../core/edit/commands/letGo.ts";
import { plantFault } from "../../../core/edit/commands/plantFault.ts";
import { pullApart } from "../../../core/edit/commands/pullApart.ts";
import { setBattery } from "../../../core/edit/commands/setBattery.ts";
import { takeOut } from "../../../core/edit/commands/takeOut.ts";
import { throwControl } from "../../../core/edit/commands/throwControl.ts";
import { afterAll, LATCH, ROW, VENTS } from "../given.ts";

export const CHECK = VENTS.checks[0]!.id;
export const vents = benchFor(VENTS);
export const busy = afterAll(
  VENTS,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => throwControl(bench, "S5", "open"),
  (bench) => pullApart(bench, "X30"),
  (bench) => takeOut(bench, "F5"),
  (bench) => setBattery(bench, true),
  (bench) => plantFault(bench, "W13:ohms=2"),
  (bench) => plantFault(bench, "M1:seized"),
);
export const melted = afterAll(
  ROW,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => plantFault(bench, "W3:short-to-ground"),
);
export const mended = afterAll(
  ROW,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => plantFault(bench, "W3:short-to-ground"),
  (bench) => healFault(bench, "W3:short-to-ground"),
);
export const latched = afterAll(
  LATCH,
  (bench) => throwControl(bench, "S1", "in"),
  (bench) => letGo(bench, "S1"),
);
export const noted: Bench = { ...vents, complaint: CHECK, observed: { [CHECK]: "dead" } };
