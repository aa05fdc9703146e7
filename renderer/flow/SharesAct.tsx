import type { Circuit } from "../../core/circuit/circuit.ts";
import { openingOf } from "../../core/diagnose/flow/openings.ts";
import { MenuAct } from "../panels/MenuAct.tsx";
import { useAppStore } from "../state/AppContext.tsx";

interface Shown {
  readonly circuit: Circuit;
  /** Id of a part, wire or point. */
  readonly place: string;
  readonly close: () => void;
}

/** Asks what else hangs on a thing; nothing where it is no place that others share, as a load. */
export function SharesAct({ circuit, place, close }: Shown) {
  const { dispatch } = useAppStore();
  if (!openingOf(circuit, place).ok) return null;
  return (
    <div className="value-acts">
      <MenuAct words="What else hangs on this" act={() => dispatch({ do: "show-shares", place })} close={close} />
    </div>
  );
}
