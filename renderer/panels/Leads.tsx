import type { Step } from "../../core/diagnose/step.ts";
import { leadWords } from "../words/step.ts";

/** The leads of the active row: boxed R and B with what each touches. */
export function Leads({ step }: { readonly step: Step }) {
  const { red, black, lamp } = leadWords(step);
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
