import { useState } from "react";
import { AMBIENT_LIMITS } from "../../core/live/condition.ts";

/** Ambient of a workshop, which every figure is for unless another is typed. */
const USUAL_C = 20;

/** The ambient temperature: copper and batteries follow it. An empty field is the usual 20 °C. */
export function Ambient({
  ambientC,
  onChange,
}: {
  readonly ambientC: number | undefined;
  readonly onChange: (typed: string) => void;
}) {
  const [typed, setTyped] = useState(ambientC === undefined ? "" : String(ambientC));
  const figure = Number(typed);
  const isWrong =
    typed.trim() !== "" && (!Number.isFinite(figure) || figure < AMBIENT_LIMITS.least || figure > AMBIENT_LIMITS.most);
  const take = (): void => {
    if (!isWrong && typed !== (ambientC === undefined ? "" : String(ambientC))) onChange(typed);
  };
  return (
    <div className="ambient">
      <label className={isWrong ? "field is-wrong" : "field"}>
        <span className="small">
          Ambient<span className="unseen"> temperature</span>
        </span>
        <input
          className="figures"
          inputMode="numeric"
          value={typed}
          placeholder={String(USUAL_C)}
          aria-invalid={isWrong}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
          onKeyDown={(event) => event.key === "Enter" && take()}
        />
        <span className="unit">°C</span>
      </label>
      {isWrong && (
        <p className="small" role="alert">
          <b>Not a temperature.</b> Type {AMBIENT_LIMITS.least} to {AMBIENT_LIMITS.most}.
        </p>
      )}
    </div>
  );
}
