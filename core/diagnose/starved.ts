import { SCAN_WORDS } from "../base/words/scan.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { type Fault, faultModes, faultText } from "../live/fault.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { type Possible, possibleFaults } from "./possible.ts";
import { notAsked, scanSays } from "./scanTool.ts";

/** How often an input that is wrong keeps a module from an output, where the drawing does not say what it waits for (a guess). */
const MATTERS = 0.3;

/**
 * Faults that change what a module sees at an input, each with the output that it then does not ask for: only of modules
 * whose outputs the drawing does not decide. They are mended where the input fails.
 */
export function starved(circuit: Circuit, condition: Condition): readonly Possible[] {
  const missing = circuit.parts.flatMap(({ id, kind }) =>
    kind === "module"
      ? faultModes(circuit, { is: "part", id }).flatMap(({ mode }): readonly Fault[] => {
          const fault = { target: id, mode };
          return notAsked(fault) ? [fault] : [];
        })
      : [],
  );
  if (missing.length === 0) return [];
  const says = (faults: readonly Fault[], module: string): string => {
    const rig = new Rig(circuit, faults);
    reach(rig, condition);
    return scanSays(rig, module, faults);
  };
  return missing.flatMap((fault) => {
    const good = says([fault], fault.target);
    return possibleFaults(circuit).flatMap((possible): readonly Possible[] => {
      if (possible.faults.some(({ target }) => target === fault.target)) return [];
      const faults = [...possible.faults, fault];
      const seen = says(faults, fault.target);
      if (seen === good || seen === SCAN_WORDS.noAnswer) return [];
      const title = `${possible.title}; ${fault.target} waits for it`;
      return [{ ...possible, id: faults.map(faultText).join("+"), faults, title, weight: possible.weight * MATTERS }];
    });
  });
}
