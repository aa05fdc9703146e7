import type { Circuit } from "../../core/circuit/circuit.ts";
import { printedSpot } from "../../core/circuit/underlays.ts";
import { tieToPrint } from "../../core/edit/commands/tieToPrint.ts";
import { untieFromPrint } from "../../core/edit/commands/untieFromPrint.ts";
import { printedUnder } from "../../core/edit/printedUnder.ts";
import { MenuAct } from "../panels/MenuAct.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";

interface Shown {
  readonly circuit: Circuit;
  /** Id of a part or wire. */
  readonly id: string;
  readonly close: () => void;
}

/** Ties a part or wire to the print that lies under it, shows where it is printed, or lets go; nothing where there is no print. */
export function PrintTie({ circuit, id, close }: Shown) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const { printed } =
    circuit.parts.find((part) => part.id === id) ?? circuit.wires.find((wire) => wire.id === id) ?? {};
  const under = printedUnder(circuit, id);
  const spot = printed && printedSpot(circuit, printed);
  if (!spot && !under) return null;
  return (
    <div className="value-acts">
      {spot && (
        <button
          type="button"
          className="button is-low"
          title={spot.underlay.title}
          onClick={() => {
            close();
            dispatch({ do: "show-printed", id });
          }}
        >
          Show where it is printed
        </button>
      )}
      {under && (
        <MenuAct
          words={spot ? "Tie to the print here" : "Tie to the print under it"}
          act={() => make((bench) => tieToPrint(bench, id, under))}
          close={close}
        />
      )}
      {spot && (
        <button type="button" className="button is-low" onClick={() => make((bench) => untieFromPrint(bench, id))}>
          Untie from the print
        </button>
      )}
    </div>
  );
}
