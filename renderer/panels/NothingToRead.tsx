import { useAppStore } from "../state/AppContext.tsx";
import { Empty } from "./Empty.tsx";

/** Stands where the rows end while suspects are left: what there is to go on with. */
export function NothingToRead() {
  const { dispatch } = useAppStore();
  return (
    <>
      <Empty title="No row is left to read">
        Suspects says what is left, where it sits and what was cleared. A reading that may be wrong can be doubted under
        Readings; the rows then come back.
      </Empty>
      <p className="order-facts">
        {(["suspects", "readings"] as const).map((panel) => (
          <button
            key={panel}
            type="button"
            className="button is-quiet is-low"
            onClick={() => dispatch({ do: "open-panel", panel })}
          >
            {panel === "suspects" ? "Suspects" : "Readings"}
          </button>
        ))}
      </p>
    </>
  );
}
