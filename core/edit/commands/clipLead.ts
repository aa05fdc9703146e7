import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import { wireSideOf } from "../../circuit/points.ts";
import { parseLead } from "../../diagnose/readingText.ts";
import type { Lead } from "../../live/attachment.ts";
import type { Bench } from "../bench.ts";
import { clippedAs, instrumentOn } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn } from "../editOf.ts";

/**
 * Clips a lead of an instrument to a place as typed: a point, `battery +` or `battery -`; the empty text takes it off. Where a
 * cavity carries the terminal it goes to the wire side of that. Refuses `instrument-absent`, `instrument-leads`, `leads-together`,
 * `already-so`, and as `parsePoint` does.
 */
export function clipLead(bench: Bench, id: string, lead: "red" | "black", typed: string): Outcome<Edit> {
  const on = instrumentOn(bench, id);
  if (!on.ok) return on;
  const each = on.value;
  if (each.instrument === "clamp") return refuse("instrument-leads");
  const place = placeOf(bench, typed.trim());
  if (!place.ok) return place;
  if (each[lead] === place.value) return alreadySo(place.value ?? `The ${lead} lead`);
  return editOf(bench, INSTRUMENT_EDITS.clipLead(each.instrument, lead, place.value), [
    goingOn(bench),
    clippedAs(bench, { ...each, [lead]: place.value }),
  ]);
}

function placeOf({ circuit }: Bench, typed: string): Outcome<Lead | null> {
  if (typed === "") return ok(null);
  const lead = parseLead(circuit, typed);
  if (!lead.ok || lead.value === "battery +" || lead.value === "battery -") return lead;
  return ok(wireSideOf(circuit, lead.value));
}
