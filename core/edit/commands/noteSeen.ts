import type { WireId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit, Seen, Wire } from "../../circuit/circuit.ts";
import { ownerOf, placeOf } from "../../circuit/seen.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { wireOf } from "../wireEnds.ts";
import { colourOf } from "../wireLook.ts";

/** Most characters of a place's name, as a circuit file takes it. */
const MOST_PLACE = 40;
/** What a place may be called. */
const PLACE = /^[^\s.,:=@~]+$/u;

/**
 * Notes that wires were seen on the vehicle: as printed, but for what is given, a colour or the place of an end as typed; the
 * empty text says that it is as printed after all. Null takes the note away. Refuses `wires-none`, `wire-unknown`, what is
 * no colour, `cavity-spelling` and `already-so`.
 */
export function noteSeen(bench: Bench, ids: readonly WireId[], given: Seen | null): Outcome<Edit> {
  if (ids.length === 0) return refuse("wires-none");
  const changes: Change[] = [];
  for (const id of new Set(ids)) {
    const wire = wireOf(bench.circuit, id);
    if (!wire.ok) return wire;
    const seen = given === null ? ok(undefined) : seenOf(bench.circuit, wire.value, given);
    if (!seen.ok) return seen;
    if (isSame(wire.value.seen, seen.value)) continue;
    const value = seen.value === undefined ? {} : { value: seen.value };
    changes.push({ change: "item", list: "wires", id, field: "seen", ...value });
  }
  if (changes.length === 0) return alreadySo(ids.join(", "));
  return editOf(bench, WIRING_NAMES.noteSeen(ids.length === 1 ? ids[0]! : null, ids.length, given === null), changes);
}

/** What is noted of a wire then: only what differs from its print. */
function seenOf(circuit: Circuit, wire: Wire, given: Seen): Outcome<Seen> {
  const typed = given.colour?.trim() ?? "";
  const colour = typed === "" ? ok("") : colourOf(circuit, typed);
  if (!colour.ok) return colour;
  const from = given.from === undefined ? ok(wire.seen?.from ?? "") : placeTyped(given.from, wire.from);
  if (!from.ok) return from;
  const to = given.to === undefined ? ok(wire.seen?.to ?? "") : placeTyped(given.to, wire.to);
  if (!to.ok) return to;
  const now = given.colour === undefined ? (wire.seen?.colour ?? "") : colour.value;
  return ok({
    ...(now !== "" && now !== wire.colour && { colour: now }),
    ...(from.value !== "" && { from: from.value }),
    ...(to.value !== "" && { to: to.value }),
  });
}

/** The name of a place, typed alone or whole with its connector; empty where it is the printed one. */
function placeTyped(typed: string, printed: string): Outcome<string> {
  const text = typed.trim();
  const place = text.startsWith(ownerOf(printed)) ? text.slice(ownerOf(printed).length) : text;
  if (place === "" || place === placeOf(printed)) return ok("");
  const isName = place.length <= MOST_PLACE && PLACE.test(place) && !(place in Object.prototype);
  return isName ? ok(place) : refuse("cavity-spelling", { name: place, most: MOST_PLACE });
}

function isSame(one: Seen | undefined, other: Seen | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return one.colour === other.colour && one.from === other.from && one.to === other.to;
}
