import { memo } from "react";
import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { useApp } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { circuitNow, differsWire, liveShown } from "../state/views.ts";
import { wireWords } from "../words/live.ts";
import { FaultPick } from "./FaultPick.tsx";
import { RowHead, useIsChosen } from "./RowHead.tsx";
import { StateGlyph } from "./StateGlyph.tsx";
import { WireCode } from "./WireCode.tsx";

/** One wire of the list: its ends, colour and state, and, when chosen, a fault to put in. */
export const WireRow = memo(function WireRow({
  wire,
  set,
}: {
  readonly wire: Wire;
  readonly set: Circuit["colourCodes"];
}) {
  const circuit = useApp(circuitNow);
  const thing: Thing = { is: "wire", id: wire.id };
  const isChosen = useIsChosen(thing);
  const now = useApp((state) => wireWords(liveShown(state)?.wires.get(wire.id)));
  const from = useApp((state) => liveShown(state)?.wires.get(wire.id)?.state[0] ?? null);
  const to = useApp((state) => liveShown(state)?.wires.get(wire.id)?.state[1] ?? null);
  const differs = useApp((state) => differsWire(state, wire.id));
  return (
    <li className={isChosen ? "row is-chosen" : "row"}>
      <RowHead thing={thing} isChosen={isChosen}>
        <span className="row-about">
          {wire.colour !== undefined && <WireCode code={wire.colour} set={set} />}
          <span className="together">{wire.from}</span> to <span className="together">{wire.to}</span>
        </span>
        <span className="row-state figures">
          {from && <StateGlyph state={from} size={14} />}
          {to && to !== from && <StateGlyph state={to} size={14} />}
          <span>
            {now}
            {differs && <b> differs</b>}
          </span>
        </span>
      </RowHead>
      {isChosen && circuit && (
        <div className="row-acts">
          <FaultPick circuit={circuit} target={wire.id} />
        </div>
      )}
    </li>
  );
});
