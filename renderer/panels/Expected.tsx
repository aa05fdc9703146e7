import type { WireState } from "../../core/base/states.ts";
import type { Setting } from "../../core/diagnose/step.ts";
import { wantedText } from "../words/reading.ts";
import { StateGlyph } from "./StateGlyph.tsx";

/** What a good circuit shows in one setting: glyph and range, how the lamp burns, or what is seen or heard. */
export function Expected({ setting, state }: { readonly setting: Setting; readonly state: WireState | undefined }) {
  const { expect } = setting;
  return (
    <span className="expected figures together">
      {state && expect.word === null && <StateGlyph state={state} size={14} />}
      {wantedText(expect)}
    </span>
  );
}
