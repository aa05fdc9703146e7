import type { Amps } from "../base/units.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import type { Passed, Why } from "./why.ts";

/** Less current than this is none. */
const LEAST_AMPS: Amps = 0.005;

/** A why in plain sentences: the way to a feed, the way to the return, where it stops; then what flows and what would change it. */
export function whyLines(circuit: Circuit, why: Why, flow = flowHere(why)): readonly string[] {
  return [...whyPath(circuit, why), ...whyBesides(circuit, why, flow)];
}

/** The way to a feed, the way to the return, and where it stops. */
export function whyPath(circuit: Circuit, why: Why): readonly string[] {
  const lines: string[] = [];
  const name = (passed: Passed): string => nameOf(circuit, passed);
  const names = (path: readonly Passed[]): string =>
    path.length === 0 ? "this point itself" : path.map(name).join(", ");
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

/** What flows, and which throws would give it another state. A wire's own flow is said in place of the point's. */
export function whyBesides(circuit: Circuit, why: Why, flow = flowHere(why)): readonly string[] {
  const lines: string[] = flow === "" ? [] : [flow];
  for (const [state, throws] of byState(circuit, why)) lines.push(`It would be ${state} with ${throws.join(", or ")}.`);
  if (why.changes.length === 0) lines.push("No switch of this circuit would change that by itself.");
  return lines;
}

/** The current of a wire and which way it goes; "" where there is none. Amps are positive from its first end to its second. */
export function flowAlong({ from, to }: Pick<Wire, "from" | "to">, amps: Amps): string {
  if (Math.abs(amps) < LEAST_AMPS) return "";
  const [start, end] = amps > 0 ? [from, to] : [to, from];
  return `${Math.abs(amps).toFixed(2)} A flow along it from ${start} to ${end}.`;
}

function flowHere({ amps }: Why): string {
  return amps < LEAST_AMPS ? "" : `${amps.toFixed(2)} A pass here.`;
}

function nameOf(circuit: Circuit, { part, way, because }: Passed): string {
  const [key = "", position] = because.split("=");
  const reason = position === undefined ? plain(because) : standing(circuit, key, position, part);
  const details = [way, reason].filter((word) => word !== "").join(", ");
  return details === "" ? part : `${part} (${details})`;
}

/** A control in a position; the part is not said again where it stands before. */
function standing(circuit: Circuit, key: string, position: string, said = ""): string {
  const found = controlAt(circuit, key);
  const own = found === undefined || key === found.part.id ? "" : (found.control.label ?? plain(found.control.name));
  const part = found?.part.id ?? key;
  return [part === said ? "" : part, own, plain(position)].filter((word) => word !== "").join(" ");
}

/** A name as it is said: "position-2" as "position 2". */
function plain(name: string): string {
  return name.replaceAll("-", " ");
}

function byState(circuit: Circuit, { changes }: Why): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const { control, position, state } of changes) {
    const word = state.replace("-through-load", " through a load");
    const list = groups.get(word) ?? [];
    list.push(standing(circuit, control, position));
    groups.set(word, list);
  }
  return groups;
}
