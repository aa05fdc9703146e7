import type { WireState } from "../../core/base/states.ts";
import type { Setting } from "../../core/diagnose/step.ts";
import { rangeText } from "../words/figures.ts";
import { StateGlyph } from "./StateGlyph.tsx";

/** What a good circuit shows in one setting: glyph and range, or how the lamp burns. */
export function Expected({ setting, state }: { readonly setting: Setting; readonly state: WireState | undefined }) {
  const { expect } = setting;
  return (
    <span className="expected figures together">
      {state && <StateGlyph state={state} size={14} />}
      {expect.lamp === null ? rangeText(expect.low, expect.high) : `lamp ${expect.lamp}`}
    </span>
  );
}
