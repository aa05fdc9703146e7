import { AddCheck } from "../circuit/AddCheck.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { CheckRow } from "./CheckRow.tsx";
import { Empty } from "./Empty.tsx";

/** The function checks: what was seen of each, and a way to set the circuit as the check wants it. */
export function WhatWorks() {
  const circuit = useApp(circuitNow);
  if (!circuit) return null;
  if (circuit.checks.length === 0)
    return (
      <div className="view-scroll">
        <Empty title="This circuit has no function checks yet">
          A check says what a load should do, such as "left tail lamp lights with the light switch on". Throw the
          switches as for that, then add it here.
        </Empty>
        <AddCheck circuit={circuit} />
      </div>
    );
  return (
    <>
      <header className="view-head">
        <h2>What works, what does not</h2>
        <p className="small">
          Tick what works on the vehicle: it clears whatever it shares with the complaint. A click on a name sets the
          drawing so.
        </p>
      </header>
      <div className="view-scroll">
        <ul className="checks">
          {circuit.checks.map((check) => (
            <CheckRow key={check.id} circuit={circuit} check={check} />
          ))}
        </ul>
        <AddCheck circuit={circuit} />
      </div>
    </>
  );
}
