import { type FormEvent, type ReactNode, useId } from "react";
import type { Command } from "../state/action.ts";
import { useTyped } from "./useTyped.ts";

/** A whole text that is offered for what is typed, and what it means. */
export interface Offer {
  readonly text: string;
  readonly words: string;
}

interface Shown {
  readonly label: string;
  /** As it stands; empty where it is not said. */
  readonly value: string;
  /** What holds while nothing is said. */
  readonly usual?: string | undefined;
  readonly unit?: string | undefined;
  /** Stands before the unit and shows what is typed, such as a colour. */
  readonly sample?: (typed: string) => ReactNode;
  /** What the typed text may be meant to become. */
  readonly offers?: (typed: string) => readonly Offer[];
  /** The edit for what was typed. */
  readonly change: (typed: string) => Command;
}

/** A value that is typed as people write it. Enter takes it; what is refused says why below and stays as it was typed. */
export function ValueField({ label, value, usual = "", unit = "", sample, offers, change }: Shown) {
  const { typed, setTyped, trouble, take } = useTyped(value, change);
  const id = useId();
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    take();
  };
  return (
    <form className="value" onSubmit={submit}>
      <label className="value-label small" htmlFor={id}>
        {label}
      </label>
      <span className={trouble === null ? "field" : "field is-wrong"}>
        <input
          id={id}
          value={typed}
          placeholder={usual}
          autoComplete="off"
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : `${id}-trouble`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
          list={offers && `${id}-offers`}
        />
        {offers && (
          <datalist id={`${id}-offers`}>
            {offers(typed).map(({ text, words }) => (
              <option key={text} value={text} label={`${text}, ${words}`} />
            ))}
          </datalist>
        )}
        {sample?.(typed)}
        {unit !== "" && <span className="unit">{unit}</span>}
      </span>
      {trouble !== null && (
        <p className="value-trouble small" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </form>
  );
}
