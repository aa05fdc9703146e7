import { renamePart } from "../../core/edit/commands/renamePart.ts";
import type { Part } from "../../core/parts/kind.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { InPlace } from "./InPlace.tsx";
import { useAsk } from "./useAsk.ts";

/** The designator of the part that is edited; the editor goes on with the part under its new one. */
export function DesignatorField({ part }: { readonly part: Part }) {
  const ask = useAsk();
  const { dispatch } = useAppStore();
  const rename = (typed: string): string | null => {
    const said = ask((bench) => renamePart(bench, part.id, typed));
    if (said !== null) return said;
    dispatch({ do: "choose", thing: { is: "part", id: typed } });
    dispatch({ do: "edit-part", part: typed });
    return null;
  };
  return (
    <div className="value">
      <span className="value-label small">Designator</span>
      <InPlace name="Designator" value={part.id} className="is-field" take={rename} />
    </div>
  );
}
