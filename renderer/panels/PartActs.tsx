import { controlsOf } from "../../core/circuit/points.ts";
import { driveOutput } from "../../core/edit/commands/driveOutput.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { putIn } from "../../core/edit/commands/putIn.ts";
import { setBattery } from "../../core/edit/commands/setBattery.ts";
import { setEngine } from "../../core/edit/commands/setEngine.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow, conditionNow } from "../state/views.ts";
import { ControlSegments } from "./ControlSegments.tsx";
import { Drives } from "./Drives.tsx";
import { FaultPick } from "./FaultPick.tsx";
import { Toggle } from "./Toggle.tsx";

/** What can be done with a part: throw its controls, pull it, put a fault in. */
export function PartActs({ part }: { readonly part: Part }) {
  const make = useMake();
  const circuit = useApp(circuitNow);
  const { apart = [], out = [], batteryOff = false, running = false } = useApp(conditionNow);
  if (!circuit) return null;
  const { id } = part;
  const role = kindOf(part.kind)?.role;
  return (
    <div className="row-acts">
      {controlsOf(circuit)
        .filter((control) => control.part.id === id)
        .map((control) => (
          <ControlSegments key={control.key} control={control} />
        ))}
      {part.kind === "battery" && (
        <Toggle
          words="Battery negative off"
          isOn={batteryOff}
          onChange={(on) => make((bench) => setBattery(bench, on))}
        />
      )}
      {part.kind === "alternator" && (
        <Toggle words="Engine running" isOn={running} onChange={(on) => make((bench) => setEngine(bench, on))} />
      )}
      <Drives circuit={circuit} part={id} onChoose={(pin, level) => make((bench) => driveOutput(bench, pin, level))} />
      {part.kind === "connector" && (
        <Toggle
          words="Pulled apart"
          isOn={apart.includes(id)}
          onChange={(on) => make((bench) => (on ? pullApart : pushHome)(bench, id))}
        />
      )}
      {role !== "join" && role !== "source" && role !== undefined && part.kind !== "connector" && (
        <Toggle
          words="Taken out"
          isOn={out.includes(id)}
          onChange={(on) => make((bench) => (on ? takeOut : putIn)(bench, id))}
        />
      )}
      <FaultPick circuit={circuit} target={id} />
    </div>
  );
}
