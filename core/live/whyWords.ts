import type { Passed, Why } from "./why.ts";

/** A why in plain sentences: the way to a feed, the way to the return, where it stops; then what flows and what would change it. */
export function whyLines(why: Why): readonly string[] {
  return [...whyPath(why), ...whyBesides(why)];
}

/** The way to a feed, the way to the return, and where it stops. */
export function whyPath(why: Why): readonly string[] {
  const lines: string[] = [];
  if (why.feed && why.state !== "grounded-through-load")
    lines.push(
      `${why.state === "powered" || why.state === "clash" ? "Fed" : "Fed through a load"} from ${names(why.feed)}.`,
    );
  if (why.back && why.state !== "powered-through-load")
    lines.push(
      `${why.state === "grounded" || why.state === "clash" ? "Grounded" : "Grounded through a load"} by ${names(why.back)}.`,
    );
  if (why.state === "floating" && !why.feed && !why.back) lines.push("It reaches neither a feed nor ground.");
  const stops = why.stops.map(
    (stop) => `${name(stop)}, ${stop.beyond.replace("-through-load", " through a load")} beyond it`,
  );
  if (stops.length > 0 && why.state !== "powered" && why.state !== "grounded")
    lines.push(`Stops at ${stops.join("; ")}.`);
  return lines;
}

/** The amps that pass, and which throws would give it another state. */
export function whyBesides(why: Why): readonly string[] {
  const lines: string[] = [];
  if (why.amps > 0.005) lines.push(`${why.amps.toFixed(2)} A pass here.`);
  for (const [state, throws] of byState(why)) lines.push(`It would be ${state} with ${throws.join(", or ")}.`);
  if (why.changes.length === 0) lines.push("No switch of this circuit would change that by itself.");
  return lines;
}

function names(path: readonly Passed[]): string {
  return path.length === 0 ? "this point itself" : path.map(name).join(", ");
}

function name({ part, way, because }: Passed): string {
  const details = [way, because.replaceAll("-", " ").replaceAll("=", " ")].filter((word) => word !== "").join(", ");
  return details === "" ? part : `${part} (${details})`;
}

function byState({ changes }: Why): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const { control, position, state } of changes) {
    const word = state.replace("-through-load", " through a load");
    const list = groups.get(word) ?? [];
    list.push(`${control} at ${position}`);
    groups.set(word, list);
  }
  return groups;
}
