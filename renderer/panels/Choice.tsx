interface Chosen<Value extends string | number> {
  readonly title: string;
  readonly now: Value;
  readonly choices: readonly (readonly [Value, string])[];
  readonly onChoose: (value: Value) => void;
  /** One below the other, for longer words. */
  readonly isColumn?: boolean;
}

/** A few choices in a row, one of them chosen. */
export function Choice<Value extends string | number>({ title, now, choices, onChoose, isColumn }: Chosen<Value>) {
  return (
    <fieldset className="setting">
      <legend className="small">{title}</legend>
      <div className={isColumn ? "segments is-column" : "segments"}>
        {choices.map(([value, words]) => (
          <button
            type="button"
            key={String(value)}
            className={value === now ? "segment is-now" : "segment"}
            aria-pressed={value === now}
            onClick={() => onChoose(value)}
          >
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

/** Many choices in a list that folds. */
export function SelectChoice({
  title,
  now,
  choices,
  onChoose,
  isFirst,
}: Chosen<string> & { readonly isFirst?: boolean }) {
  return (
    <label className="setting">
      <span className="small">{title}</span>
      <span className="field">
        <select
          value={now}
          // biome-ignore lint/a11y/noAutofocus: the form that it begins was asked for just now
          autoFocus={isFirst === true}
          onChange={(event) => onChoose(event.target.value)}
        >
          {choices.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </span>
    </label>
  );
}
