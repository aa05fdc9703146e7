import { memo } from "react";
import type { Part } from "../../core/parts/kind.ts";
import { useApp } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { circuitNow, differsPart, partNow } from "../state/views.ts";
import { partTitle } from "../words/part.ts";
import { PartActs } from "./PartActs.tsx";
import { RowHead, useIsChosen } from "./RowHead.tsx";

/** One part of the list: what it is, what it does now, and, when chosen, what can be done with it. */
export const PartRow = memo(function PartRow({ part }: { readonly part: Part }) {
  const thing: Thing = { is: "part", id: part.id };
  const isChosen = useIsChosen(thing);
  const now = useApp((state) => partNow(state, part.id));
  const differs = useApp((state) => differsPart(state, part.id));
  const title = useApp((state) => {
    const circuit = circuitNow(state);
    return circuit ? partTitle(circuit, part) : "";
  });
  return (
    <li className={isChosen ? "row is-chosen" : "row"}>
      <RowHead thing={thing} isChosen={isChosen}>
        <span className="row-about">{title}</span>
        <span className="row-state figures">
          {now}
          {differs && <b> differs</b>}
        </span>
      </RowHead>
      {isChosen && <PartActs part={part} />}
    </li>
  );
});
