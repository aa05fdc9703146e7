import { MOVE_WORDS as SAY } from "../base/words/learner.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import { fuseAcross } from "../diagnose/inPlace.ts";
import type { Move, ProbeMove } from "./move.ts";
import { plantOf } from "./plant.ts";

/** A move as a person says it: "Volts at X5-6", "Unplug X5", "Bonnet open". */
export function moveWords(circuit: Circuit, move: Move): string {
  switch (move.do) {
    case "throw":
      return SAY.throw(controlName(circuit, move.control), move.position.replaceAll("-", " "));
    case "try":
      return SAY.try(circuit.checks.find(({ id }) => id === move.check)?.label ?? move.check);
    case "engine":
      return SAY.engine(move.running);
    case "open":
      return circuit.access.find(({ id }) => id === move.access)?.label ?? move.access;
    case "unplug":
      return SAY.unplug(move.connector);
    case "plug-in":
      return SAY.plugIn(move.connector);
    case "take-out":
      return SAY.takeOut(move.part);
    case "put-in":
      return SAY.putIn(move.part);
    case "renew":
      return SAY.renew(move.part);
    case "probe":
      return probeWords(circuit, move);
    case "hint":
      return SAY.hint;
    case "verdict": {
      const named = plantOf(circuit, move.suspect);
      return SAY.verdict(named.ok ? named.value.title : move.suspect);
    }
  }
}

function controlName(circuit: Circuit, key: string): string {
  const control = controlAt(circuit, key);
  if (!control || control.key === control.part.id) return key;
  return `${control.part.id} ${control.control.label ?? control.control.name.replaceAll("-", " ")}`;
}

function probeWords(circuit: Circuit, { red, black, instrument, lampTo }: ProbeMove): string {
  switch (instrument) {
    case "meter volts":
      return black === "battery -" ? SAY.volts(red) : SAY.voltsTo(red, post(black));
    case "meter ohms":
      return SAY.ohms(red, post(black));
    case "clamp":
      return SAY.clamp(red);
    case "look":
      return SAY.look(red);
    case "listen":
      return SAY.listen(red);
    case "scan tool":
      return SAY.scan(red);
    case "fed direct":
      return SAY.feed(red);
    case "fed loose":
      return SAY.feedLoose(red);
    case "like relay":
      return SAY.swap(red);
    case "4 A lamp":
    case "0.25 A lamp":
      if (lampTo === "black") return SAY.lampInPlace(lamp(instrument), fuseAcross(circuit, red, black) ?? red);
      return lampTo === "battery +" ? SAY.lampFromPlus(lamp(instrument), red) : SAY.lamp(lamp(instrument), red);
  }
}

function lamp(instrument: "4 A lamp" | "0.25 A lamp"): string {
  return instrument.replace(" A", "\u00a0A");
}

function post(lead: string): string {
  return lead === "battery -" ? SAY.minus : lead === "battery +" ? SAY.plus : lead;
}
