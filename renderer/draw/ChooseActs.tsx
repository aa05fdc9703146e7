import type { Circuit } from "../../core/circuit/circuit.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { connectorsWith, netThings, wiresOnConnector } from "../state/groups.ts";
import type { Thing } from "../state/state.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly thing: Thing;
  readonly close: () => void;
}

/** Chooses what belongs together with a thing: its whole net, or all wires on its connectors. */
export function ChooseActs({ circuit, thing, close }: Shown) {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const choose = (things: readonly Thing[]): void => {
    dispatch({ do: "choose-all", things });
    close();
  };
  const net = netThings(circuit, thing);
  const connectors = connectorsWith(circuit, thing).map((id) => ({ id, wires: wiresOnConnector(circuit, id) }));
  return (
    <div className="value-acts">
      {net.length > 1 && (
        <button type="button" className="button is-low" title={keyOf("choose-net")} onClick={() => choose(net)}>
          Choose all of this net
        </button>
      )}
      {connectors.map(
        ({ id, wires }) =>
          wires.length > 0 && (
            <button
              key={id}
              type="button"
              className="button is-low"
              title={keyOf("choose-connector")}
              onClick={() => choose(wires)}
            >
              Choose all wires on {id}
            </button>
          ),
      )}
    </div>
  );
}
