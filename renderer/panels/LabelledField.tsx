import type { RefObject } from "react";

interface Shown {
  readonly label: string;
  readonly value: string;
  readonly onChange: (typed: string) => void;
  /** What holds while nothing is typed, or an example. */
  readonly usual?: string;
  readonly unit?: string;
  /** "number" brings up figures on a screen's keyboard; "secret" shows no signs. */
  readonly typed?: "words" | "number" | "secret";
  /** True where the person has just asked to type here: it has the focus, and what stands in it is chosen. */
  readonly isFirst?: boolean;
  /** Id of the sentence that says what is wrong; absent while nothing is. */
  readonly trouble?: string | undefined;
  readonly field?: RefObject<HTMLInputElement | null>;
}

/** One line to be typed beside its label, in a form that is taken as a whole. */
export function LabelledField({ label, value, onChange, usual, unit, typed, isFirst, trouble, field }: Shown) {
  return (
    <label className="value">
      <span className="value-label small">{label}</span>
      <span className={trouble === undefined ? "field" : "field is-wrong"}>
        <input
          ref={field}
          type={typed === "secret" ? "password" : "text"}
          inputMode={typed === "number" ? "decimal" : undefined}
          // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
          autoFocus={isFirst}
          value={value}
          placeholder={usual}
          autoComplete={typed === "secret" ? "new-password" : "off"}
          aria-invalid={trouble !== undefined}
          aria-describedby={trouble}
          onFocus={(event) => isFirst && event.target.select()}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit !== undefined && <span className="unit">{unit}</span>}
      </span>
    </label>
  );
}

interface TextShown extends Pick<Shown, "label" | "value" | "onChange" | "usual"> {
  readonly rows?: number;
}

/** Several lines to be typed under their label. */
export function LabelledText({ label, value, onChange, usual, rows = 3 }: TextShown) {
  return (
    <label className="labelled-text">
      <span className="value-label small">{label}</span>
      <textarea rows={rows} value={value} placeholder={usual} onChange={(event) => onChange(event.target.value)} />
    </label>
  );
}
