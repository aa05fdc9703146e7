import { changeCautions } from "../../core/edit/commands/changeCautions.ts";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { AccessGroups } from "./AccessGroups.tsx";
import { CautionList } from "./CautionList.tsx";
import { CircuitFacts } from "./CircuitFacts.tsx";
import { Pages } from "./Pages.tsx";
import { Versions } from "./Versions.tsx";

/** What is written of the circuit as a whole: its title and vehicle, cautions, pages, access groups and earlier versions. */
export function CircuitView() {
  const circuit = useApp(circuitNow);
  if (!circuit) return null;
  return (
    <div className="view-scroll">
      <header className="view-head">
        <h2>This circuit</h2>
      </header>
      <CircuitFacts circuit={circuit} />
      <section className="circuit-part" aria-label="Cautions of the vehicle">
        <h3 className="place-name">Cautions of the vehicle</h3>
        <p className="small circuit-about">Every printed sheet repeats them.</p>
        <CautionList
          of="the vehicle"
          cautions={circuit.cautions ?? []}
          change={(cautions) => (bench) => changeCautions(bench, cautions)}
        />
      </section>
      <Pages circuit={circuit} />
      <AccessGroups circuit={circuit} />
      <Versions />
    </div>
  );
}
