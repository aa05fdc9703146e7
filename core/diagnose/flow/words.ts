import type { Amps } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { controlAt } from "../../circuit/points.ts";
import { offRest, standingText } from "../../circuit/sheetCondition.ts";
import type { MeltWindow } from "../../trade/meltWindow.ts";
import type { Change, Effect } from "./changes.ts";
import type { JumperCaution, JumperCheck, JumperEffect } from "./jumper.ts";
import type { Limit } from "./limits.ts";
import type { Shares } from "./shares.ts";
import { type SneakGroup, VISIBLE_FROM } from "./sneakGroups.ts";
import type { PathStep } from "./sneakPath.ts";
import type { Sneak, SneakLoad } from "./sneaks.ts";

/** Amps as they are said: "14.2 A", "85 mA". */
export function ampsSaid(amps: Amps): string {
  const size = Math.abs(amps);
  return size < 1 ? `${Math.round(size * 1000)} mA` : `${size.toFixed(size < 100 ? 1 : 0)} A`;
}

/** A condition in running words: "S1 low, S3 held pressed"; "all at rest" where nothing differs. */
export function conditionSaid(circuit: Circuit, condition: Condition): string {
  const thrown = offRest(circuit, condition).map((each) => {
    const { key, part } = each.control;
    return `${part.id} ${standingText(each, { withName: controlAt(circuit, key)?.key !== part.id, isScreen: true })}`;
  });
  const others = [
    ...(condition.apart ?? []).map((id) => `${id} apart`),
    ...(condition.out ?? []).map((id) => `${id} out`),
    ...Object.entries(condition.drive ?? {}).map(([pin, level]) => `${pin} driven ${level}`),
    ...(condition.batteryOff ? ["battery off"] : []),
    ...(condition.running ? ["engine running"] : []),
    ...(condition.ambientC === undefined ? [] : [`${condition.ambientC} °C`]),
  ];
  return [...thrown, ...others].join(", ") || "all at rest";
}

/** When a fuse melts: "melts within 0.15 to 5 s"; "holds" where its gates let it carry that for ever. */
export function meltSaid({ least, most }: MeltWindow): string {
  if (most === "never") return least >= HOLDS_FROM ? "holds" : `may melt, after ${secondsSaid(least)} at the soonest`;
  if (least === 0) return `melts within ${secondsSaid(most)}`;
  return `melts within ${least < 120 === most < 120 ? least : secondsSaid(least)} to ${secondsSaid(most)}`;
}

/** Gates name no time beyond this, seconds: a hundred hours count as for ever. */
const HOLDS_FROM = 360_000;

function secondsSaid(seconds: number): string {
  if (seconds < 120) return `${seconds} s`;
  return seconds < 7200 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 3600)} h`;
}

/** A limit against what runs: "F7, 10 A: 14.2 A, melts within 0.15 to 5 s". */
export function limitSaid({ target, amps, allowed, melts, mm2 }: Limit): string {
  const share = `${Math.round((100 * amps) / allowed)} %`;
  if (mm2 !== null) return `${target}, ${mm2} mm²: ${ampsSaid(amps)}, ${share} of the ${allowed} A of its size`;
  return `${target}, ${allowed} A: ${ampsSaid(amps)}, ${share}${melts ? `, ${meltSaid(melts)}` : ""}`;
}

/** What the place carries at the worst, and what all that hangs on it would take together. */
export function mostSaid(circuit: Circuit, { opening, most, sum, sharers }: Shares): string {
  const { target } = opening;
  if (sharers.length === 0) return `No load's current runs through ${target} in any position.`;
  const worst = `At most ${ampsSaid(most.amps)} with ${conditionSaid(circuit, most.condition)}`;
  return sum > 1.02 * most.amps ? `${worst}; all loads at their most would take ${ampsSaid(sum)}.` : `${worst}.`;
}

const VERDICTS: Readonly<Record<Change["verdict"], string>> = {
  dead: "dead",
  weak: "weak",
  wrong: "odd",
  strong: "too strong",
};

/** An effect of an opening: "E1 weak: 63 % of its work", "K3 odd: pulled-in instead of released". */
export function effectSaid({ part, verdict, doing, healthy, level }: Effect): string {
  const share = `${Math.round(100 * level)} % of its work`;
  if (verdict === "dead") return `${part} dead`;
  const how = verdict === "wrong" ? `${doing} instead of ${healthy}` : share;
  return `${part} ${VERDICTS[verdict]}: ${how}`;
}

/** What a load does by a sneak path: "K3 pulls in (50 mA)", "E7 glows (0.3 A)". */
export function loadSaid({ part, doing, amps, verdict, share }: SneakLoad): string {
  const does =
    { forward: "runs forward", reverse: "runs backwards", "pulled-in": "pulls in", stalled: "stalls" }[
      doing as string
    ] ?? (verdict === "wrong" ? "comes on" : share >= VISIBLE_FROM && doing !== "off" ? "glows" : "gets current");
  return `${part} ${does} (${ampsSaid(amps)})`;
}

/** What the sneak paths of a group come to. */
export const SNEAK_GROUPS: Readonly<Record<SneakGroup, string>> = {
  runs: "Something runs that should not",
  glows: "Something glows or takes current",
  unseen: "Nothing is seen of it",
};

/** What has to be open for a sneak path: "GP3 off its stud or GP4 off its stud"; "nothing wrong" where it is in the design. */
export function openingsSaid({ openings }: Pick<Sneak, "openings">): string {
  return openings.length === 0 ? "nothing wrong" : openings.map(({ title }) => title).join(" or ");
}

/** A path in words: "G1, F1, F9, S3, E5 54 to 58 (not its way), F3, E3 (not its way), GP3". */
export function pathSaid(path: readonly PathStep[]): string {
  return path
    .map(({ part, entry, exit, isReversed }) => {
      const way = entry !== "" && exit !== "" ? ` ${entry} to ${exit}` : "";
      return `${part}${way}${isReversed ? " (not its way)" : ""}`;
    })
    .join(", ");
}

/** The sentence of a sneak path: what must be open, where the controls stand, and what gets current that should not. */
export function sneakSaid(circuit: Circuit, sneak: Sneak): string {
  const { condition, loads, wires, failing } = sneak;
  const isDead = (part: string): boolean => failing.some((each) => each.part === part && each.verdict === "dead");
  const reached = loads.filter(({ part }) => !isDead(part));
  const told = reached.slice(0, MOST_LOADS).map(loadSaid);
  const more = reached.length > MOST_LOADS ? ` and ${reached.length - MOST_LOADS} more` : "";
  const gets =
    told.length > 0
      ? `${told.join(", ")}${more}`
      : wires.length > 0
        ? `${wires[0]!.wire} carries ${ampsSaid(wires[0]!.amps)} the other way`
        : `${loads.map(({ part }) => part).join(", ")} carries ${ampsSaid(sneak.amps)} the other way`;
  const dead = failing.filter(({ verdict }) => verdict === "dead").map(({ part }) => part);
  return `With ${openingsSaid(sneak)} and ${conditionSaid(circuit, condition)}: ${gets}${dead.length > 0 ? `; dead: ${dead.join(", ")}` : ""}.`;
}

const MOST_LOADS = 4;

/** What a jumper does, in one sentence: "14.2 A would flow through F7 (10 A): it melts within 0.75 s to 30 min." */
export function jumperSaid({ amps, melts, limits, fuseAmps }: JumperCheck): string {
  if (melts) {
    const fuse =
      melts.target === "" ? `the jumper's own fuse (${melts.rating} A)` : `${melts.target} (${melts.rating} A)`;
    return `${ampsSaid(melts.amps)} would flow through ${fuse}: it ${meltSaid(melts.window)}.`;
  }
  if (Math.abs(amps) < NO_AMPS) return "No current would flow through the jumper.";
  const lead = fuseAmps === null ? "the jumper" : `the jumper (${fuseAmps} A)`;
  const hot = limits.find(({ amps: is, allowed }) => is > allowed);
  const which = hot ? `; ${limitSaid(hot)}` : "; no fuse melts";
  return `${ampsSaid(amps)} would flow through ${lead}${which}.`;
}

const NO_AMPS: Amps = 0.001;

/** A caution of a jumper, in a sentence. */
export function jumperCautionSaid(caution: JumperCaution): string {
  switch (caution.caution) {
    case "module-pin":
      return `${caution.point} hangs on a module's pin: no jumper goes there.`;
    case "do-not-probe":
      return `${caution.point} is not to be probed: ${caution.reason}.`;
    case "dead-short":
      return "It is a dead short from feed to ground: do not clip it on.";
    case "across-load":
      return `It bridges ${caution.part}, which takes current: it would short what feeds it.`;
    case "may-move":
      return "Hands and tools clear: what it feeds may move at once.";
    case "bare-lead":
      return "Use a lead with a fuse of 5 A, and never set it across a motor or other heavy load.";
  }
}

/** What a jumper makes a part do: "M3 goes from off to forward, 3.0 A". */
export function jumperEffectSaid({ part, before, now, amps }: JumperEffect): string {
  return `${part} goes from ${before} to ${now}${amps >= NO_AMPS ? `, ${ampsSaid(amps)}` : ""}`;
}
