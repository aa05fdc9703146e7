import type { Circuit } from "../../core/circuit/circuit.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { ChooseActs } from "../draw/ChooseActs.tsx";
import { FollowActs } from "../draw/FollowActs.tsx";
import { WireAcross } from "../draw/WireAcross.tsx";
import { JumperAct } from "../flow/JumperAct.tsx";
import { SharesAct } from "../flow/SharesAct.tsx";
import { LeadActs } from "../instruments/LeadActs.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { conditionNow, liveShown } from "../state/views.ts";
import { pointWords } from "../words/live.ts";
import { ConnectorFace } from "./ConnectorFace.tsx";
import { FaultPick } from "./FaultPick.tsx";
import { TableAct } from "./TableAct.tsx";
import { Toggle } from "./Toggle.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly point: string;
  /** Id of the connector whose place it is; null for a stud or blade. */
  readonly connector: string | null;
  readonly close: () => void;
}

/** What can be done at a pin: pull its plug, put a fault in, see the plug's face and its position table. */
export function PointMenu({ circuit, point, connector, close }: Shown) {
  const make = useMake();
  const now = useApp((state) => pointWords(liveShown(state)?.points.get(point)));
  const where = circuit.reach[point]?.where ?? circuit.reach[connector ?? ""]?.where;
  const { apart = [] } = useApp(conditionNow);
  return (
    <>
      <header className="menu-head">
        <h2>{point}</h2>
        <p className="small figures">{now}</p>
        {where !== undefined && <p className="small">{where}</p>}
      </header>
      {connector !== null && (
        <>
          <ConnectorFace circuit={circuit} point={point} />
          <Toggle
            words={`${connector} pulled apart`}
            isOn={apart.includes(connector)}
            onChange={(on) => make((bench) => (on ? pullApart : pushHome)(bench, connector))}
          />
        </>
      )}
      <LeadActs point={point} close={close} />
      <FaultPick circuit={circuit} target={point} />
      <FollowActs circuit={circuit} thing={{ is: "point", id: point }} close={close} />
      <SharesAct circuit={circuit} place={point} close={close} />
      <JumperAct point={point} close={close} />
      <ChooseActs circuit={circuit} thing={{ is: "point", id: point }} close={close} />
      {connector !== null && <WireAcross circuit={circuit} connector={connector} close={close} />}
      {connector !== null && (
        <div className="value-acts">
          <TableAct connector={connector} close={close} />
        </div>
      )}
    </>
  );
}
