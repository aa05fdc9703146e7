import { type FormEvent, type ReactNode, useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { Command } from "../state/action.ts";
import { isToldOf } from "../state/reduceBench.ts";
import { benchOf } from "../state/state.ts";

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
  const { dispatch, getState } = useAppStore();
  const [typed, setTyped] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [known, setKnown] = useState(value);
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble(null);
  }
  const take = (): void => {
    const bench = benchOf(getState());
    if (!bench) return;
    const command = change(typed);
    const edit = typed === value ? null : command(bench);
    setTrouble(edit && !edit.ok && isToldOf(edit.refusal) ? sentence(edit.refusal) : null);
    if (edit?.ok) dispatch({ do: "make", command });
    else if (edit && !isToldOf(edit.refusal)) setTyped(value);
  };
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
