import { clampRound } from "../../core/edit/commands/clampRound.ts";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import type { Clipped } from "../../core/live/instruments/clipped.ts";
import { HAND, type LeadTool } from "../canvas/tool.ts";
import { ValueField } from "../panels/ValueField.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";

interface Shown {
  readonly each: Clipped;
  readonly lead: LeadTool["lead"];
}

const LABELS = { red: "Red on", black: "Black on", jaws: "Round wire" } as const;
const SIGNS = { red: "R", black: "B", jaws: "A" } as const;

/** A lead or the jaws of a clamp: where it is, as typed, and a way to clip it on by a press on the drawing. */
export function LeadRow({ each, lead }: Shown) {
  const { dispatch } = useAppStore();
  const isInHand = useApp(
    ({ open }) => open?.tool.is === "lead" && open.tool.instrument === each.id && open.tool.lead === lead,
  );
  const place = placeOf(each, lead);
  const tool: LeadTool = { is: "lead", instrument: each.id, lead, from: place };
  return (
    <div className="lead-row">
      <i className={lead === "black" ? "is-black" : undefined} aria-hidden="true">
        {SIGNS[lead]}
      </i>
      <ValueField
        label={LABELS[lead]}
        value={place ?? ""}
        usual={lead === "jaws" ? "W13" : "X5-6, GP2.stud, battery -"}
        change={(typed) => (bench) =>
          lead === "jaws"
            ? clampRound(bench, each.id, typed.trim() === "" ? null : typed.trim())
            : clipLead(bench, each.id, lead, typed)
        }
      />
      <button
        type="button"
        className={isInHand ? "button is-low is-on" : "button is-low"}
        aria-pressed={isInHand}
        onClick={() => dispatch({ do: "use-tool", tool: isInHand ? HAND : tool })}
      >
        {isInHand ? "Press the drawing" : "Clip on"}
      </button>
    </div>
  );
}

function placeOf(each: Clipped, lead: LeadTool["lead"]): string | null {
  if (each.instrument === "clamp") return each.around;
  return lead === "jaws" ? null : each[lead];
}
