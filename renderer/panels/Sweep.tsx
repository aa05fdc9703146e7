import type { WireState } from "../../core/base/states.ts";
import type { Step } from "../../core/diagnose/step.ts";
import { Expected } from "./Expected.tsx";

/** What each position of the swept control reads, one set of leads for all. */
export function Sweep({ step, states }: { readonly step: Step; readonly states: readonly WireState[] }) {
  return (
    <p className="sweep">
      {step.settings.map((setting, index) => (
        <span key={setting.position}>
          <span className="sweep-position">{setting.position.replaceAll("-", " ")}</span>
          <Expected setting={setting} state={states[index]} />
        </span>
      ))}
    </p>
  );
}
