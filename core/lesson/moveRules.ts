import { type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlAt, partAt } from "../circuit/points.ts";
import { conditionRefusal } from "../live/condition.ts";
import type { Exercise } from "./exercise.ts";
import type { Move, VerdictMove } from "./move.ts";
import type { Standing } from "./moveMinutes.ts";
import { plantOf } from "./plant.ts";
import { placeRefusal, probeRefusal } from "./probeRules.ts";
import { hasSpare } from "./renewed.ts";

/** How often what was done by now. */
export interface DoneSoFar {
  readonly readings: number;
  readonly hints: number;
}

const no = (code: string, about: Refusal["about"] = {}): Refusal => refuse(code, about).refusal;

/** Why a move cannot be made as things stand, or null where it can. Nothing of it depends on the fault. */
export function moveRefusal(exercise: Exercise, now: Standing, move: Move, done: DoneSoFar): Refusal | null {
  const { circuit, hints } = exercise;
  switch (move.do) {
    case "throw":
      return throwRefusal(circuit, now, move.control, move.position);
    case "try":
      return circuit.checks.some(({ id }) => id === move.check)
        ? null
        : no("check-unknown", { check: move.check, checks: circuit.checks.map(({ id }) => id).join(", ") });
    case "engine":
      return (now.condition.running ?? false) === move.running
        ? no("move-engine", { does: move.running ? "runs" : "stands still" })
        : null;
    case "open":
      return openRefusal(circuit, now, move.access);
    case "unplug":
    case "plug-in":
      return plugRefusal(circuit, now, move.connector, move.do === "unplug");
    case "take-out":
    case "put-in":
      return outRefusal(circuit, now, move.part, move.do === "take-out");
    case "renew":
      return hasSpare(circuit, move.part)
        ? placeRefusal(circuit, now, move.part)
        : no("move-no-spare", { part: move.part });
    case "probe":
      return probeRefusal(exercise, now, move);
    case "hint":
      return done.hints < hints.count ? null : no("move-hint", { count: hints.count });
    case "verdict":
      return verdictRefusal(circuit, move, done.readings);
  }
}

function throwRefusal(circuit: Circuit, { condition }: Standing, key: string, position: string): Refusal | null {
  const unknown = conditionRefusal(circuit, { set: { [key]: position } });
  if (unknown) return unknown;
  const stands = condition.set?.[key] ?? controlAt(circuit, key)!.rest;
  return stands === position ? no("move-stands", { control: key, position }) : null;
}

function openRefusal({ access }: Circuit, { open }: Standing, id: string): Refusal | null {
  const group = access.find((each) => each.id === id);
  if (!group) return no("move-access", { access: id, groups: access.map((each) => each.id).join(", ") || "none" });
  return open.includes(id) ? no("move-open", { trim: group.label }) : null;
}

function plugRefusal(circuit: Circuit, now: Standing, id: string, isUnplugging: boolean): Refusal | null {
  const unknown = conditionRefusal(circuit, { apart: [id] });
  if (unknown) return unknown;
  const isApart = now.condition.apart?.includes(id) ?? false;
  if (isApart === isUnplugging) return no(isApart ? "move-apart" : "move-home", { plug: id });
  return placeRefusal(circuit, now, id);
}

function outRefusal(circuit: Circuit, now: Standing, id: string, isTakingOut: boolean): Refusal | null {
  const kind = partAt(circuit, id)?.kind;
  if (kind !== "fuse" && kind !== "relay") return no("move-no-socket", { part: id });
  const isOut = now.condition.out?.includes(id) ?? false;
  if (isOut === isTakingOut) return no(isOut ? "move-out" : "move-in", { part: id });
  return placeRefusal(circuit, now, id);
}

function verdictRefusal(circuit: Circuit, { suspect, proof }: VerdictMove, readings: number): Refusal | null {
  const named = plantOf(circuit, suspect);
  if (!named.ok) return named.refusal;
  const stray = proof.find((number) => number < 1 || number > readings || !Number.isInteger(number));
  return stray === undefined ? null : no("move-proof", { number: stray, readings });
}
