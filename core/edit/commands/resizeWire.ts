import { parseAmount } from "../../base/amount.ts";
import type { WireId } from "../../base/ids.ts";
import { type Outcome, ok } from "../../base/outcome.ts";
import type { SquareMillimetres } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { gaugeMm2, parseGauge } from "../../trade/gauge.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { wireAmountEdit } from "../wireAmount.ts";

/** Sizes of gauges are kept to so many digits. */
const DIGITS = 3;

/**
 * Gives a wire another size: "0.75 mm2", or a gauge written as "AWG 18" or "18 ga"; the empty text says that it is not
 * known. Refuses `wire-unknown`, a wrong amount or gauge, and `already-so`.
 */
export function resizeWire(bench: Bench, wire: WireId, typed: string): Outcome<Edit> {
  const { resizeWire: name, unknown: unsaid } = EDIT_NAMES;
  return wireAmountEdit(bench, wire, typed, { field: "mm2", parse: sizeOf, name, unsaid });
}

function sizeOf(text: string): Outcome<SquareMillimetres> {
  const [, before, after] = /^(?:awg\s*(\S+)|(\S+)\s*(?:awg|ga|gauge))$/i.exec(text.trim()) ?? [];
  const written = before ?? after;
  if (written === undefined) return parseAmount(text, "mm2");
  const gauge = parseGauge(written);
  return gauge.ok ? ok(Number(gaugeMm2(gauge.value).toPrecision(DIGITS))) : gauge;
}
