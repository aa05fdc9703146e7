import type { Circuit } from "../../core/circuit/circuit.ts";
import { faultTitle } from "../../core/live/fault.ts";
import { Toggle } from "../panels/Toggle.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { faultsNow } from "../state/views.ts";
import { unbroken } from "../words/figures.ts";

/** The faults that are put in, which the class never sees by name; and whether it sees what they do. */
export function ClassPlanted({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const faults = useApp(faultsNow);
  const showsFaults = useApp(({ open }) => open?.lesson.showsFaults ?? false);
  if (faults.length === 0) return null;
  return (
    <section className="class-scene" aria-label="Put in, and not named to the class">
      <h3 className="place-name">Put in, and not named to the class</h3>
      <ul className="class-faults">
        {faults.map((fault) => (
          <li key={`${fault.target} ${fault.mode}`}>{unbroken(faultTitle(circuit, fault))}</li>
        ))}
      </ul>
      <Toggle
        words="The class sees what they do"
        about="Without it, the wires stand as with nothing wrong."
        isOn={showsFaults}
        onChange={(on) => dispatch({ do: "teach", lesson: { showsFaults: on } })}
      />
    </section>
  );
}
