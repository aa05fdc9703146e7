import { useId, useMemo, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { targetsOf } from "../words/fault.ts";
import { Icon } from "./Icon.tsx";

const MOST_SHOWN = 7;

interface Shown {
  readonly circuit: Circuit;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What may be named; all that can have a fault of its own where absent. */
  readonly targets?: readonly Target[];
}

/** A field for the name of something that can fail; what fits is offered below while typing. */
export function TargetField({ circuit, value, onChange, targets: given }: Shown) {
  const targets = useMemo(() => given ?? targetsOf(circuit), [circuit, given]);
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const list = useId();
  const words = value.trim().toLowerCase();
  const isWhole = targets.some(({ id }) => id === value);
  const fitting = words === "" || isWhole ? [] : targets.filter((each) => fits(each, words)).sort(byName(words));
  const shown = open ? fitting.slice(0, MOST_SHOWN) : [];
  const active = Math.min(at, shown.length - 1);
  const take = (id: string | undefined): void => {
    if (id !== undefined) onChange(id);
    setOpen(false);
  };
  return (
    <div className="target-field">
      <label className="field">
        <Icon name="find" size={16} />
        <input
          value={value}
          placeholder="a part, wire or pin: S6, W13, X6-6"
          aria-label="What is faulty: a part, wire or pin"
          role="combobox"
          aria-expanded={shown.length > 0}
          aria-controls={list}
          aria-activedescendant={shown.length > 0 ? `${list}-${active}` : undefined}
          autoComplete="off"
          onFocus={() => setOpen(true)}
          onBlur={() => setOpen(false)}
          onChange={(event) => {
            onChange(event.target.value);
            setOpen(true);
            setAt(0);
          }}
          onKeyDown={(event) => {
            if (shown.length === 0) return;
            if (event.key === "ArrowDown") setAt(Math.min(shown.length - 1, active + 1));
            else if (event.key === "ArrowUp") setAt(Math.max(0, active - 1));
            else if (event.key === "Enter") take(shown[active]?.id);
            else if (event.key === "Escape") setOpen(false);
            else return;
            event.preventDefault();
          }}
        />
      </label>
      <div id={list} role="listbox" aria-label="What fits" className="card target-list" hidden={shown.length === 0}>
        {shown.map(({ id, about }, index) => (
          // biome-ignore lint/a11y/useFocusableInteractive: focus stays in the field, which names the active one
          <div
            key={id}
            id={`${list}-${index}`}
            role="option"
            aria-selected={index === active}
            className={index === active ? "menu-item is-active" : "menu-item"}
            onPointerDown={(event) => {
              event.preventDefault();
              take(id);
            }}
          >
            <b className="together">{id}</b>
            <span className="menu-about">{about}</span>
          </div>
        ))}
      </div>
    </div>
  );
}

interface Target {
  readonly id: string;
  readonly about: string;
}

function fits({ id, about }: Target, words: string): boolean {
  return `${id} ${about}`.toLowerCase().includes(words);
}

/** Those whose name begins so come first. */
function byName(words: string): (one: Target, other: Target) => number {
  const rank = ({ id }: Target): number => (id.toLowerCase().startsWith(words) ? 0 : 1);
  return (one, other) => rank(one) - rank(other);
}
