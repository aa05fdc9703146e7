import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { clearReadings } from "../../core/edit/commands/clearReadings.ts";
import { setBatteryVolts } from "../../core/edit/commands/setBatteryVolts.ts";
import { Empty } from "../panels/Empty.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { batteryVoltsNow, circuitNow, orderNow, readingsNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { ProgressLines } from "./ProgressLines.tsx";
import { ReadingRow } from "./ReadingRow.tsx";

/** What was read on the vehicle, in order: each can be doubted, struck out, taken as right again, or removed. */
export function ReadingsView() {
  const make = useMake();
  const circuit = useApp(circuitNow);
  const readings = useApp(readingsNow);
  const batteryVolts = useApp(batteryVoltsNow);
  const { answer } = useApp(orderNow);
  if (!circuit) return null;
  const volts = batteryVolts === null ? "" : String(batteryVolts);
  return (
    <>
      <header className="view-head">
        <h2>Readings</h2>
        {answer && readings.length > 0 && <ProgressLines order={answer.order} />}
        <div className="battery-volts">
          <ValueField
            label="Battery at rest"
            value={volts}
            usual={usualVolts(circuit)}
            unit="V"
            change={(typed) => (bench) => setBatteryVolts(bench, typed)}
          />
        </div>
      </header>
      <div className="view-scroll">
        {readings.length === 0 ? (
          <Empty title="Nothing was read yet">
            Choose a row of the probe order, type what the meter shows, such as 11.9, and press Enter.
          </Empty>
        ) : (
          <Rows />
        )}
        {readings.length > 0 && (
          <button type="button" className="button is-quiet" onClick={() => make(clearReadings)}>
            Clear {counted(readings.length, "reading")}
          </button>
        )}
      </div>
    </>
  );
}

function Rows() {
  const circuit = useApp(circuitNow);
  const readings = useApp(readingsNow);
  const { answer } = useApp(orderNow);
  const doubtful = useMemo(() => new Set(answer?.order.clashes.flat()), [answer]);
  if (!circuit) return null;
  return (
    <ol className="readings">
      {readings.map((reading, index) => (
        <ReadingRow
          key={index}
          circuit={circuit}
          reading={reading}
          number={index + 1}
          isClashing={doubtful.has(index + 1)}
        />
      ))}
    </ol>
  );
}

/** What a charged battery of the circuit shows. */
function usualVolts({ nominalVolts }: Circuit): string {
  return (1.05 * nominalVolts).toFixed(1);
}
