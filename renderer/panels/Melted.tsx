import { replaceFuse } from "../../core/edit/commands/replaceFuse.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { meltedNow } from "../state/views.ts";
import { Caution } from "./Caution.tsx";

/** Fuses that have melted and breakers that have tripped, with a way to put each right. Absent where all are whole. */
export function Melted() {
  const make = useMake();
  const melted = useApp(meltedNow);
  if (melted.length === 0) return null;
  return (
    <section className="melted">
      {melted.map(({ part, state }) => (
        <div key={part}>
          <Caution>
            <b>{part}</b> has {state}.
          </Caution>
          <button type="button" className="button is-low" onClick={() => make((bench) => replaceFuse(bench, part))}>
            {state === "tripped" ? "Reset it" : "Replace it"}
          </button>
        </div>
      ))}
    </section>
  );
}
