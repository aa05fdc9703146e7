import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { driveOutput } from "../../core/edit/commands/driveOutput.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { putIn } from "../../core/edit/commands/putIn.ts";
import { restAll } from "../../core/edit/commands/restAll.ts";
import { setAmbient } from "../../core/edit/commands/setAmbient.ts";
import { setBattery } from "../../core/edit/commands/setBattery.ts";
import { setEngine } from "../../core/edit/commands/setEngine.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow, conditionNow } from "../state/views.ts";
import { fusesOf, hasEngine, plugsOf } from "../words/pulls.ts";
import { Ambient } from "./Ambient.tsx";
import { ConditionGroup } from "./ConditionGroup.tsx";
import { ControlSegments } from "./ControlSegments.tsx";
import { Drives } from "./Drives.tsx";
import { Melted } from "./Melted.tsx";
import { Scenes } from "./Scenes.tsx";
import { Toggle } from "./Toggle.tsx";

/** Everything that a condition holds: scenes, controls, plugs, fuses, battery, engine, module outputs, ambient. */
export function ConditionView() {
  const make = useMake();
  const circuit = useApp(circuitNow);
  if (!circuit) return null;
  return (
    <div className="view-scroll">
      <header className="view-head">
        <div className="complaint">
          <h2>What differs from rest</h2>
          <button type="button" className="button is-low" onClick={() => make(restAll)}>
            All to rest
          </button>
        </div>
      </header>
      <Melted />
      <Scenes circuit={circuit} />
      <Surroundings circuit={circuit} />
      <ConditionGroup title="Controls">
        {controlsOf(circuit).map((control) => (
          <ControlSegments key={control.key} control={control} />
        ))}
      </ConditionGroup>
      <Pulls circuit={circuit} />
      <Drives circuit={circuit} onChoose={(point, level) => make((bench) => driveOutput(bench, point, level))} />
    </div>
  );
}

function Surroundings({ circuit }: { readonly circuit: Circuit }) {
  const make = useMake();
  const { batteryOff = false, running = false, ambientC } = useApp(conditionNow);
  return (
    <ConditionGroup title="Battery, engine, ambient">
      <Toggle
        words="Battery negative off"
        isOn={batteryOff}
        onChange={(on) => make((bench) => setBattery(bench, on))}
      />
      {hasEngine(circuit) && (
        <Toggle words="Engine running" isOn={running} onChange={(on) => make((bench) => setEngine(bench, on))} />
      )}
      <Ambient key={ambientC} ambientC={ambientC} onChange={(typed) => make((bench) => setAmbient(bench, typed))} />
    </ConditionGroup>
  );
}

function Pulls({ circuit }: { readonly circuit: Circuit }) {
  const make = useMake();
  const { apart = [], out = [] } = useApp(conditionNow);
  return (
    <>
      <ConditionGroup title="Plugs pulled apart">
        {plugsOf(circuit).map(({ id, about }) => (
          <Toggle
            key={id}
            words={id}
            about={about}
            isOn={apart.includes(id)}
            onChange={(on) => make((bench) => (on ? pullApart : pushHome)(bench, id))}
          />
        ))}
      </ConditionGroup>
      <ConditionGroup title="Fuses and relays taken out">
        {fusesOf(circuit).map(({ id, about }) => (
          <Toggle
            key={id}
            words={id}
            about={about}
            isOn={out.includes(id)}
            onChange={(on) => make((bench) => (on ? takeOut : putIn)(bench, id))}
          />
        ))}
      </ConditionGroup>
    </>
  );
}
