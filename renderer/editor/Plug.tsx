import { useState } from "react";
import type { Circuit, Connector } from "../../core/circuit/circuit.ts";
import { isInLine, terminalPoint, terminalsOf } from "../../core/circuit/points.ts";
import { relabelConnector } from "../../core/edit/commands/relabelConnector.ts";
import type { Part } from "../../core/parts/kind.ts";
import { ValueField } from "../panels/ValueField.tsx";
import { CavityFields } from "./CavityFields.tsx";
import { PinPaste } from "./PinPaste.tsx";
import { PlugFace } from "./PlugFace.tsx";
import { ReachFields } from "./ReachFields.tsx";
import { RowsChoice } from "./RowsChoice.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly plug: Connector;
}

/** A connector: its face from either side, the place that is chosen, a pin list to be pasted, its label and its reach. */
export function Plug({ circuit, part, plug }: Shown) {
  const isJoint = isInLine(part);
  const [isMirrored, setIsMirrored] = useState(false);
  const names = plug.rows.flat().filter((name) => name !== "");
  const [chosen, setChosen] = useState(() => firstPlace(circuit, part, plug));
  const cavity = names.includes(chosen) ? chosen : (names[0] ?? "");
  const sides = isJoint ? ["Side a", "Side b"] : ["Wire side", "Mating side"];
  const half = isJoint ? (isMirrored ? "b" : "a") : "";
  return (
    <>
      <p className="small">
        {plug.label !== undefined && `${plug.label}. `}
        {isJoint
          ? `Side ${half}, seen from where its wires come in.`
          : isMirrored
            ? "Seen from the mating side, as it looks unplugged."
            : "Seen from the wire side."}
      </p>
      <PlugFace
        circuit={circuit}
        plug={plug}
        half={half}
        isMirrored={isMirrored}
        chosen={cavity}
        onChoose={setChosen}
      />
      <div className="plug-acts">
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
        <div className="segments" role="group" aria-label="Side that is seen">
          {sides.map((words, index) => (
            <button
              key={words}
              type="button"
              className={isMirrored === (index === 1) ? "segment is-now" : "segment"}
              aria-pressed={isMirrored === (index === 1)}
              onClick={() => setIsMirrored(index === 1)}
            >
              {words}
            </button>
          ))}
        </div>
        <RowsChoice plug={plug} />
      </div>
      <CavityFields
        key={`${plug.id} ${cavity}`}
        circuit={circuit}
        part={part}
        plug={plug}
        cavity={cavity}
        half={half}
        onRename={setChosen}
      />
      <PinPaste circuit={circuit} plug={plug} />
      <section className="values" aria-label={`About ${plug.id}`}>
        <ValueField
          label={`Label of ${plug.id}`}
          value={plug.label ?? ""}
          usual="such as plug of the fan"
          change={(typed) => (bench) => relabelConnector(bench, plug.id, typed)}
        />
      </section>
      {!isJoint && (
        <details className="menu-values">
          <summary>How {plug.id} is reached</summary>
          <ReachFields circuit={circuit} at={plug.id} of={plug.id} />
        </details>
      )}
    </>
  );
}

/** The place of the part's first terminal that the plug carries. */
function firstPlace(circuit: Circuit, part: Part, { cavities = {} }: Connector): string {
  const points = terminalsOf(circuit, part).map((terminal) => terminalPoint(part, terminal));
  return Object.entries(cavities).find(([, carries]) => points.includes(carries))?.[0] ?? "";
}
