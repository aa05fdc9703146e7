import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { type Possible, possibleFaults } from "../diagnose/possible.ts";
import { type Fault, faultModes, faultText, parseFault, targetOf } from "../live/fault.ts";

/**
 * What a fault's text would plant: one fault of any value its kind allows, or several with one cause as `possibleFaults`
 * spells them, `X5-1:backed-out+X5-6:backed-out`. Refuses as `parseFault` does; `plant-crossed` for wires that touch, which no
 * suspect stands for; `plant-several` for faults without a common cause; `plant-pattern` for one that comes and goes, since grading is on what
 * readings leave of the other suspects, and those taken while it is away leave all of them.
 */
export function plantOf(circuit: Circuit, text: string): Outcome<Possible> {
  const known = (id: string): Possible | undefined => possibleFaults(circuit).find((possible) => possible.id === id);
  const listed = known(text.trim());
  if (listed) return ok(listed);
  const fault = parseFault(circuit, text);
  if (!fault.ok) return text.includes("+") ? severalRefusal(circuit, text) : fault;
  if (fault.value.pattern !== undefined) return refuse("plant-pattern", { fault: text });
  if (fault.value.mode === "crossed") return refuse("plant-crossed", { fault: text });
  return ok(known(faultText(fault.value)) ?? ofOtherValue(circuit, fault.value));
}

/** Several faults: what is wrong with one of them is said first. */
function severalRefusal(circuit: Circuit, text: string): { readonly ok: false; readonly refusal: Refusal } {
  for (const each of text.split("+")) {
    const fault = parseFault(circuit, each);
    if (!fault.ok) return fault;
  }
  return refuse("plant-several", { fault: text });
}

/** A fault of a value that is not among the usual ones: mended as they are. */
function ofOtherValue(circuit: Circuit, fault: Fault): Possible {
  const target = targetOf(circuit, fault.target);
  const mode = target ? faultModes(circuit, target).find(({ mode }) => mode === fault.mode) : undefined;
  return {
    id: faultText(fault),
    faults: [fault],
    title: `${fault.target} ${mode?.title ?? fault.mode}, ${fault.value} ${mode?.value?.unit ?? ""}`.trimEnd(),
    repair: `${fault.target}|${mode?.repair ?? ""}`,
    weight: mode?.weight ?? 0,
  };
}
