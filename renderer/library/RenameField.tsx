import { useState } from "react";
import type { CircuitRow } from "../../schemas/calls.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { shownTitle } from "../words/library.ts";

/** The title of a circuit as a field: Enter keeps it, Escape leaves it as it was. */
export function RenameField({ row }: { readonly row: CircuitRow }) {
  const { dispatch } = useAppStore();
  const [title, setTitle] = useState(row.title);
  const keep = (): void => {
    const typed = title.trim();
    if (typed === "" || typed === row.title) dispatch({ do: "begin-rename", id: null });
    else dispatch({ do: "rename", id: row.id, title: typed });
  };
  return (
    <div className="field entry-rename">
      <input
        // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
        autoFocus
        value={title}
        maxLength={LIMITS.labelLength}
        aria-label={`New title for ${shownTitle(row.title)}`}
        onFocus={(event) => event.target.select()}
        onChange={(event) => setTitle(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key !== "Enter" && event.key !== "Escape") return;
          // The circuit gets the keys back at once, and the same Enter would open it.
          event.preventDefault();
          if (event.key === "Enter") keep();
          else dispatch({ do: "begin-rename", id: null });
        }}
      />
    </div>
  );
}
