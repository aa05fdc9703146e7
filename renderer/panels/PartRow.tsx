import { memo } from "react";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { differsPart, partNow } from "../state/views.ts";
import { PartActs } from "./PartActs.tsx";

/** One part of the list: what it is, what it does now, and, when chosen, what can be done with it. */
export const PartRow = memo(function PartRow({ part }: { readonly part: Part }) {
  const { dispatch } = useAppStore();
  const isChosen = useApp(({ open }) => open?.chosen?.is === "part" && open.chosen.id === part.id);
  const now = useApp((state) => partNow(state, part.id));
  const differs = useApp((state) => differsPart(state, part.id));
  const title = kindOf(part.kind)?.title ?? part.kind;
  return (
    <li className={isChosen ? "row is-chosen" : "row"}>
      <button
        type="button"
        className="row-head"
        aria-expanded={isChosen}
        onClick={() =>
          dispatch(isChosen ? { do: "choose", thing: null } : { do: "find", thing: { is: "part", id: part.id } })
        }
      >
        <b className="together">{part.id}</b>
        <span className="row-about">{part.label ?? title}</span>
        <span className="row-state figures">
          {now}
          {differs && <b> differs</b>}
        </span>
      </button>
      {isChosen && <PartActs part={part} />}
    </li>
  );
});
