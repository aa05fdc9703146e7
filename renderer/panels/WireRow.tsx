import { memo } from "react";
import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow, differsWire, liveShown } from "../state/views.ts";
import { wireWords } from "../words/live.ts";
import { FaultPick } from "./FaultPick.tsx";
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
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const isChosen = useApp(({ open }) => open?.chosen?.is === "wire" && open.chosen.id === wire.id);
  const now = useApp((state) => wireWords(liveShown(state)?.wires.get(wire.id)));
  const from = useApp((state) => liveShown(state)?.wires.get(wire.id)?.state[0] ?? null);
  const to = useApp((state) => liveShown(state)?.wires.get(wire.id)?.state[1] ?? null);
  const differs = useApp((state) => differsWire(state, wire.id));
  return (
    <li className={isChosen ? "row is-chosen" : "row"}>
      <button
        type="button"
        className="row-head"
        aria-expanded={isChosen}
        onClick={() =>
          dispatch(isChosen ? { do: "choose", thing: null } : { do: "find", thing: { is: "wire", id: wire.id } })
        }
      >
        <b className="together">{wire.id}</b>
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
      </button>
      {isChosen && circuit && (
        <div className="row-acts">
          <FaultPick circuit={circuit} target={wire.id} />
        </div>
      )}
    </li>
  );
});
