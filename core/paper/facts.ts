import type { Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { kindOf } from "../parts/catalogue.ts";
import { settingsOf } from "../parts/view.ts";
import { openVolts } from "../trade/battery.ts";

/** Title of a circuit with its revision, where it has one. */
export function circuitTitle({ title, revision }: Circuit): string {
  return revision === undefined ? title : WORDS.revision(title, revision);
}

/** Volts of the reference battery at rest, as its charge gives them; those of a full one where there is none. */
export function restVoltsOf(circuit: Circuit): Volts {
  const batteries = circuit.parts.filter(({ kind }) => kind === "battery");
  const battery = batteries.find(({ settings }) => settings?.reference === true) ?? batteries[0];
  const kind = kindOf("battery");
  if (!battery || !kind) return openVolts(1, circuit.nominalVolts);
  const { volts, charge } = settingsOf(kind, battery, circuit.nominalVolts);
  return (openVolts(Number(charge) / 100) * Number(volts)) / 12;
}
