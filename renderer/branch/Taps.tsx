import type { Tap } from "../../core/live/branchTaps.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { tapLead } from "./branchWords.ts";

/** What else hangs on a place of the line, each thing one press away. */
export function Taps({ taps }: { readonly taps: readonly Tap[] }) {
  const { dispatch } = useAppStore();
  return (
    <ul className="taps" aria-label="What else hangs there">
      {taps.map((tap) => (
        <li key={tap.wire ?? "inside"}>
          {tapLead(tap)}
          {tap.to.map((id) => (
            <button
              key={id}
              type="button"
              className="tap"
              onClick={() => dispatch({ do: "find", thing: { is: "part", id } })}
              onPointerEnter={() => dispatch({ do: "hover", thing: { is: "part", id } })}
              onPointerLeave={() => dispatch({ do: "hover", thing: null })}
            >
              {id}
            </button>
          ))}
        </li>
      ))}
    </ul>
  );
}
