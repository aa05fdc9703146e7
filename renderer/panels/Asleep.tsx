import { milliampsText } from "../../core/diagnose/drain.ts";
import { setSleepingAmps } from "../../core/edit/commands/setSleepingAmps.ts";
import { SLEEPING_AMPS } from "../../core/trade/sleeping.ts";
import { useApp } from "../state/AppContext.tsx";
import { sleepingAmpsNow } from "../state/views.ts";
import { Caution } from "./Caution.tsx";
import { ValueField } from "./ValueField.tsx";

/** What a battery that goes flat is held against, and what to heed before the first row. */
export function Asleep({ before }: { readonly before: readonly string[] }) {
  const amps = useApp(sleepingAmpsNow);
  return (
    <>
      <div className="battery-volts">
        <ValueField
          label="Expected asleep"
          value={amps === null ? "" : milliampsText(amps)}
          usual={milliampsText(SLEEPING_AMPS.amps)}
          unit="mA"
          change={(typed) => (bench) => setSleepingAmps(bench, typed)}
        />
        {amps === null && (
          <p className="caption">The usual figure, {SLEEPING_AMPS.source.document}; the maker's goes before it.</p>
        )}
      </div>
      {before.map((line) => (
        <Caution key={line}>{line}</Caution>
      ))}
    </>
  );
}
