import type { Amps, SquareMillimetres } from "../../base/units.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { partAt } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { viewOf } from "../../parts/view.ts";
import { THIN_WALL_AMPS, THIN_WALL_SOURCE } from "../../trade/ampacity.ts";
import { isFuseFamily } from "../../trade/fuses.ts";
import { type MeltWindow, meltWindow } from "../../trade/meltWindow.ts";
import type { Source } from "../../trade/source.ts";

/** What a fuse, breaker or wire may carry, against what it does. */
export interface Limit {
  /** The fuse, breaker or wire. */
  readonly target: string;
  readonly amps: Amps;
  /** The rating of a fuse or breaker; the amps of a wire's size by the supplier's table. */
  readonly allowed: Amps;
  /** When a fuse of its family melts at those amps by its published gates; null for a wire or breaker. */
  readonly melts: MeltWindow | null;
  readonly mm2: SquareMillimetres | null;
  readonly source: Source | null;
}

/** Amps that a fuse or breaker is held to, either sign; null for any other part. */
export function fuseLimit(circuit: Circuit, id: string, amps: Amps): Limit | null {
  const part = partAt(circuit, id);
  const kind = part && kindOf(part.kind);
  if (!part || kind?.role !== "protection") return null;
  const view = viewOf(kind, part, circuit.nominalVolts);
  const allowed = view.number("amps");
  const family = part.kind === "fuse" ? view.word("family") : "";
  const melts = isFuseFamily(family) ? meltWindow(family, allowed, amps) : null;
  return { target: id, amps: Math.abs(amps), allowed, melts, mm2: null, source: melts?.source ?? null };
}

/**
 * Amps that a wire's size may carry all the time, by the largest size of the table that is no thicker (MK Global Trading,
 * thin-wall ISO 6722 class B). Null where no size is given, or it is thinner than the table begins.
 */
export function wireLimit(circuit: Circuit, id: string, amps: Amps): Limit | null {
  const mm2 = circuit.wires.find((wire) => wire.id === id)?.mm2;
  const row = mm2 === undefined ? undefined : THIN_WALL_AMPS.filter((each) => each.mm2 <= mm2).at(-1);
  if (mm2 === undefined || !row) return null;
  return { target: id, amps: Math.abs(amps), allowed: row.amps, melts: null, mm2, source: THIN_WALL_SOURCE };
}
