import type { Circuit } from "../circuit/circuit.ts";
import type { Branches, BranchLine, BranchRow } from "./branchTable.ts";
import { otherVehicles } from "./otherVehicles.ts";
import { fitsIn, type Shows } from "./reading.ts";
import { shownTo } from "./shown.ts";
import type { Suspect } from "./step.ts";
import type { Observation } from "./suspects.ts";

/** The line of a row that what was read falls in: the first that fits, as a person reads it; null where none does. */
export function lineFor({ lines }: BranchRow, shows: readonly Shows[]): BranchLine | null {
  return lines.find(({ windows }) => fitsIn(windows, shows)) ?? null;
}

/**
 * Letter of the verdict to which a vehicle with a suspect's faults is led, its readings taken as a meter shows them, to the
 * hundredth; null where no line fits, or the rows go round.
 */
export function verdictFor(
  circuit: Circuit,
  complaint: Observation,
  { rows }: Branches,
  suspect: Pick<Suspect, "id" | "faults">,
): string | null {
  let row: BranchRow | undefined = rows[0];
  for (let taken = 0; row && taken < rows.length; taken++) {
    const { point, black, instrument, lampTo, settings } = row.step;
    const shows = settings.map(({ condition }) => {
      const probe = { red: point, black, instrument, lampTo, condition };
      return metered(shownTo(circuit, complaint.check.condition, [suspect], probe)[0]!);
    });
    const line = lineFor(row, shows);
    if (!line) return null;
    if ("verdict" in line.goes) return line.goes.verdict;
    row = rows[line.goes.row - 1];
  }
  return null;
}

/**
 * The first suspect that the table does not lead to a verdict with its own repair, on the vehicle as drawn or on another one;
 * null where every one gets there.
 */
export function firstMisled(circuit: Circuit, complaint: Observation, branches: Branches): string | null {
  for (const vehicle of [circuit, ...otherVehicles(circuit)]) {
    for (const suspect of branches.suspects) {
      const letter = verdictFor(vehicle, complaint, branches, suspect);
      const verdict = branches.verdicts.find((each) => each.letter === letter);
      if (!verdict?.repairs.some(({ repair }) => repair === suspect.repairGroup)) return suspect.title;
    }
  }
  return null;
}

/** As a meter shows it: hundredths of a volt, tenths of a millivolt below a fifth of a volt; ohms and amps to the hundredth. */
function metered(shows: Shows): Shows {
  const { volts, ohms, amps } = shows;
  const hundredths = (figure: number): number => Number(figure.toFixed(2));
  if (volts !== null) return { ...shows, volts: Math.abs(volts) < 0.2 ? Number(volts.toFixed(4)) : hundredths(volts) };
  if (ohms !== undefined) return { ...shows, ohms: hundredths(ohms) };
  return amps === undefined ? shows : { ...shows, amps: hundredths(amps) };
}
