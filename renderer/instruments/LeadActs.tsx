import { clipLead } from "../../core/edit/commands/clipLead.ts";
import type { LeadsClipped } from "../../core/live/instruments/clipped.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { clippedNow } from "../state/views.ts";
import { instrumentTitle } from "../words/instrument.ts";

interface Shown {
  readonly point: string;
  readonly close: () => void;
}

/** In the menu of a pin: a way to clip each lead of the instruments on the bench here. Absent where none lies there. */
export function LeadActs({ point, close }: Shown) {
  const make = useMake();
  const clipped = useApp(clippedNow);
  const withLeads = clipped.filter((each): each is LeadsClipped => each.instrument !== "clamp");
  if (withLeads.length === 0) return null;
  const clip = (id: string, lead: "red" | "black"): void => {
    make((bench) => clipLead(bench, id, lead, point));
    close();
  };
  return (
    <fieldset className="lead-acts">
      <legend className="small">Clip here</legend>
      {withLeads.map((each) => {
        const { id } = each;
        return (
          <div key={id} className="value-acts">
            <span className="small">{instrumentTitle(each, clipped.length)}</span>
            <button type="button" className="button is-low" onClick={() => clip(id, "red")}>
              Red
            </button>
            <button type="button" className="button is-low" onClick={() => clip(id, "black")}>
              Black
            </button>
          </div>
        );
      })}
    </fieldset>
  );
}
