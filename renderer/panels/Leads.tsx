import type { Step } from "../../core/diagnose/step.ts";
import { leadWords } from "../words/step.ts";

/** The leads of the active row: boxed R and B with what each touches; of a clamp the wire it goes round. */
export function Leads({ step }: { readonly step: Step }) {
  const { red, black, lamp } = leadWords(step);
  if (step.instrument === "clamp")
    return (
      <div className="leads">
        <span className="lead">
          <i aria-hidden="true">A</i>
          <span>
            clamp round the wire at <b className="together">{red}</b>
          </span>
        </span>
      </div>
    );
  return (
    <div className="leads">
      <span className="lead">
        <i aria-hidden="true">R</i>
        <span>
          red on <b className="together">{red}</b>
        </span>
      </span>
      <span className="lead">
        <i className="is-black" aria-hidden="true">
          B
        </i>
        <span>
          black on <b className="together">{black}</b>
        </span>
      </span>
      {lamp !== null && (
        <span className="lead">
          <i aria-hidden="true">L</i>
          <span>{lamp}</span>
        </span>
      )}
    </div>
  );
}
