import { STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { PositionCell } from "../../core/diagnose/positionTable.ts";
import { voltsText } from "../words/figures.ts";
import { StateGlyph } from "./StateGlyph.tsx";

/** What one pin shows in one position: glyph and volts, and how a lamp burns to either post. */
export function PositionReading({ cell }: { readonly cell: PositionCell }) {
  const { state, volts, lampToMinus, lampToPlus } = cell;
  return (
    <>
      <span className="reading figures together">
        <StateGlyph state={state} size={14} />
        <span className="unseen">{STATE_WORDS[state]}, </span>
        {state === "floating" ? "drifts" : voltsText(volts)}
      </span>
      <span className="lamps caption together">
        <span className="unseen">lamp to battery minus </span>− {lampToMinus}
        <br />
        <span className="unseen">lamp to battery plus </span>+ {lampToPlus}
      </span>
    </>
  );
}
