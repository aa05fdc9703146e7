import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { ChooseActs } from "../draw/ChooseActs.tsx";
import { FollowActs } from "../draw/FollowActs.tsx";
import { SeenValues } from "../draw/SeenValues.tsx";
import { SharesAct } from "../flow/SharesAct.tsx";
import { PrintTie } from "../printed/PrintTie.tsx";
import { useApp } from "../state/AppContext.tsx";
import { liveShown } from "../state/views.ts";
import { wireWords } from "../words/live.ts";
import { FaultPick } from "./FaultPick.tsx";
import { WireCode } from "./WireCode.tsx";
import { WireValues } from "./WireValues.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly wire: Wire;
  readonly close: () => void;
}

/** What can be done with a wire: put a fault in, change its colour, size and length. */
export function WireMenu({ circuit, wire, close }: Shown) {
  const now = useApp((state) => wireWords(liveShown(state)?.wires.get(wire.id)));
  return (
    <>
      <header className="menu-head">
        <h2>
          {wire.id} {wire.colour !== undefined && <WireCode code={wire.colour} set={circuit.colourCodes} />}
        </h2>
        <p className="small">
          <span className="together">{wire.from}</span> to <span className="together">{wire.to}</span>
        </p>
        <p className="small figures">{now}</p>
      </header>
      <FaultPick circuit={circuit} target={wire.id} />
      <FollowActs circuit={circuit} thing={{ is: "wire", id: wire.id }} close={close} />
      <SharesAct circuit={circuit} place={wire.id} close={close} />
      <ChooseActs circuit={circuit} thing={{ is: "wire", id: wire.id }} close={close} />
      <PrintTie circuit={circuit} id={wire.id} close={close} />
      <details className="menu-values">
        <summary>Colour, size, length</summary>
        <WireValues circuit={circuit} wire={wire} />
      </details>
      <details className="menu-values" open={wire.seen !== undefined}>
        <summary>Seen on the vehicle</summary>
        <SeenValues circuit={circuit} wire={wire} />
      </details>
    </>
  );
}
