import type { Happening } from "../../core/live/settle.ts";

/** What happened while the circuit settled, in one sentence. */
export function happeningText(happening: Happening): string {
  switch (happening.what) {
    case "melted":
      return `Fuse ${happening.part} melts: ${happening.amps.toFixed(1)} A through it, ${windowText(happening)}. Replace it like for like once the cause is found.`;
    case "may-melt":
      return `Fuse ${happening.part} carries ${happening.amps.toFixed(1)} A while the switch is held and would melt ${windowText(happening)}.`;
    case "chatters":
      return `${happening.parts.join(", ")} chatters: it switches off what pulls it in.`;
    case "order-dependent":
      return `${happening.parts.join(" and ")} race: the result depends on which moves first.`;
    case "not-solved":
      return `No operating point was found (${happening.residualAmps.toExponential(1)} A left over).`;
  }
}

function windowText({ least, most }: { readonly least: number; readonly most: number | "never" }): string {
  return most === "never" ? `after ${seconds(least)} at the soonest` : `within ${seconds(least)} to ${seconds(most)}`;
}

function seconds(time: number): string {
  if (time < 120) return `${time} s`;
  return time < 7200 ? `${Math.round(time / 60)} min` : `${Math.round(time / 3600)} h`;
}

/** Marks of a wire in words: always fed, weak. */
export function markWords({ alwaysFed, weak }: { readonly alwaysFed: boolean; readonly weak: boolean }): string {
  return [alwaysFed ? "always fed" : "", weak ? "weak" : ""].filter((word) => word !== "").join(", ");
}
