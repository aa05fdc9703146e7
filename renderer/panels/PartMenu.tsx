import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Part } from "../../core/parts/kind.ts";
import { ChooseActs } from "../draw/ChooseActs.tsx";
import { FollowActs } from "../draw/FollowActs.tsx";
import { WireAcross } from "../draw/WireAcross.tsx";
import { SharesAct } from "../flow/SharesAct.tsx";
import { PrintTie } from "../printed/PrintTie.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { plugIdsOf } from "../state/places.ts";
import { partNow } from "../state/views.ts";
import { partTitle } from "../words/part.ts";
import { MenuAct } from "./MenuAct.tsx";
import { PartActs } from "./PartActs.tsx";
import { PartValues } from "./PartValues.tsx";
import { TableAct } from "./TableAct.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly close: () => void;
}

/** What can be done with a part: throw it, pull it, put a fault in, see its plugs in a table, change what it says. */
export function PartMenu({ circuit, part, close }: Shown) {
  const { dispatch } = useAppStore();
  const now = useApp((state) => partNow(state, part.id));
  const plugs = plugIdsOf(circuit, part);
  const where = [part.id, ...plugs].flatMap((id) => circuit.reach[id]?.where ?? [])[0];
  return (
    <>
      <header className="menu-head">
        <h2>
          {part.id} <span>{partTitle(circuit, part)}</span>
        </h2>
        {now !== "" && <p className="small figures">{now}</p>}
        {where !== undefined && <p className="small">{where}</p>}
      </header>
      <PartActs part={part} />
      <div className="value-acts">
        <MenuAct words="Edit this part" act={() => dispatch({ do: "edit-part", part: part.id })} close={close} />
        {plugs.map((id) => (
          <TableAct key={id} connector={id} close={close} />
        ))}
      </div>
      <FollowActs circuit={circuit} thing={{ is: "part", id: part.id }} close={close} />
      <SharesAct circuit={circuit} place={part.id} close={close} />
      <ChooseActs circuit={circuit} thing={{ is: "part", id: part.id }} close={close} />
      {plugs.map((id) => (
        <WireAcross key={id} circuit={circuit} connector={id} close={close} />
      ))}
      <PrintTie circuit={circuit} id={part.id} close={close} />
      <details className="menu-values">
        <summary>Label and values</summary>
        <PartValues circuit={circuit} part={part} />
      </details>
    </>
  );
}
