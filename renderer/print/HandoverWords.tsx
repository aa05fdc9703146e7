import { useId } from "react";
import { useAppStore } from "../state/AppContext.tsx";
import type { HandoverSaid } from "../workers/sheets.ts";

const FIELDS = [
  ["told", "What the owner told", 2],
  ["done", "What was done", 3],
  ["after", "How it works after the repair", 2],
  ["watch", "What to watch for", 2],
  ["job", "Job number", 1],
] as const satisfies readonly (readonly [keyof HandoverSaid, string, number])[];

/** What a handover page says in people's own words; what is left empty is left to be written by hand. */
export function HandoverWords({ said }: { readonly said: HandoverSaid }) {
  const { dispatch } = useAppStore();
  const id = useId();
  const write = (name: (typeof FIELDS)[number][0], words: string): void =>
    dispatch({ do: "print-what", sheets: { handover: { ...said, [name]: words } } });
  return (
    <div className="handover-words">
      <p className="caption">
        For the owner, 240 words at most. Names of the drawing become plain words; what stays empty gets lines to write
        on.
      </p>
      {FIELDS.map(([name, title, rows]) => (
        <label key={name} htmlFor={`${id}-${name}`} className="handover-field">
          <span className="small">{title}</span>
          <textarea
            id={`${id}-${name}`}
            rows={rows}
            value={said[name]}
            maxLength={600}
            onChange={(event) => write(name, event.target.value)}
          />
        </label>
      ))}
    </div>
  );
}
