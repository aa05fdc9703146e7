import { remember } from "../base/memo.ts";
import type { Circuit, Connector } from "../circuit/circuit.ts";
import { type Fault, faultModes, faultText, modeTitle, type Target } from "../live/fault.ts";
import type { FaultMode } from "../parts/kind.ts";
import { WEIGHTS } from "../parts/weights.ts";

/** Something that can be wrong: one fault, or several with one cause, mended together. */
export interface Possible {
  /** The faults' text, `X5-6:corroded=20`; several are joined by "+". */
  readonly id: string;
  readonly faults: readonly Fault[];
  /** In words: "X5-6 corroded, 20 ohm added". */
  readonly title: string;
  /** What it is mended by: the thing and the repair. */
  readonly repair: string;
  /** Likelihood before anything is known, relative to the others. */
  readonly weight: number;
}

/** All that can be wrong with a circuit: every single fault, and plugs that are loose or wet as a whole. */
export const possibleFaults = remember((circuit: Circuit): readonly Possible[] => [
  ...singleFaults(circuit),
  ...circuit.connectors.flatMap((connector) => plugFaults(circuit, connector)),
]);

/** Every single fault; a mode that takes a value comes once for each usual value. */
function singleFaults(circuit: Circuit): readonly Possible[] {
  const targets: Target[] = [
    ...circuit.parts.map((part) => ({ is: "part" as const, id: part.id })),
    ...circuit.connectors.flatMap(cavitiesOf),
    ...circuit.wires.map((wire) => ({ is: "wire" as const, id: wire.id })),
  ];
  return targets.flatMap((target) =>
    faultModes(circuit, target).flatMap((mode) => (mode.mode === "crossed" ? [] : valuesOf(target.id, mode))),
  );
}

/** The places of a plug that carry something, as targets of faults; all of them where it does not say. */
export function cavitiesOf({ id, rows, cavities: carried }: Connector): readonly Extract<Target, { is: "cavity" }>[] {
  const cavities = rows.flat().filter((cavity) => cavity !== "" && (!carried || carried[cavity] !== undefined));
  return cavities.map((cavity) => ({ is: "cavity", id: `${id}-${cavity}`, connector: id, cavity }));
}

function valuesOf(target: string, mode: FaultMode): readonly Possible[] {
  const repair = `${target}|${mode.repair}`;
  if (!mode.value) {
    const fault: Fault = { target, mode: mode.mode };
    return [{ id: faultText(fault), faults: [fault], title: modeTitle(target, mode), repair, weight: mode.weight }];
  }
  const { usual } = mode.value;
  return usual.map((value) => {
    const fault: Fault = { target, mode: mode.mode, value };
    const title = modeTitle(target, mode, value);
    return { id: faultText(fault), faults: [fault], title, repair, weight: mode.weight / usual.length };
  });
}

/** Ohms that water leaves in every place of a plug at once (a guess). */
const WET_OHMS = 20;

/** What befalls a whole plug: it is not pushed home, or water got into it. */
function plugFaults(circuit: Circuit, connector: Connector): readonly Possible[] {
  const places = cavitiesOf(connector).map(({ id }) => id);
  if (places.length < 2) return [];
  const all = (title: string, weight: number, fault: (target: string) => Fault): Possible => {
    const faults = places.map(fault);
    const id = faults.map(faultText).join("+");
    return { id, faults, title: `${connector.id} ${title}`, repair: `${connector.id}|mend the plug`, weight };
  };
  const isFitted = !circuit.parts.some(({ id, kind }) => id === connector.id && kind === "connector");
  return [
    all(isFitted ? "not pushed home" : "come apart", WEIGHTS.plugLoose, (target) => ({ target, mode: "backed-out" })),
    all(`wet, ${WET_OHMS} ohm in every place`, WEIGHTS.plugWet, (target) => ({
      target,
      mode: "corroded",
      value: WET_OHMS,
    })),
  ];
}
