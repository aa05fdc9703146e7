import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Sneak } from "../../core/diagnose/flow/sneaks.ts";
import { pathSaid, sneakSaid } from "../../core/diagnose/flow/words.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { faultText } from "../../core/live/fault.ts";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { sneaksNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";

/** Every way current can run against the drawn direction with one place open, what matters most first. */
export function SneakPaths({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const isSeeking = useApp(({ open }) => open?.isSeeking === true);
  const { answer, isOld, trouble } = useApp(sneaksNow);
  return (
    <section aria-label="Sneak paths">
      <h2 className="place-name">Sneak paths</h2>
      {!isSeeking && (
        <>
          <p className="small">
            Which way can current run against the drawn direction, with one ground, fuse, splice leg or shared wire
            open?
          </p>
          <p>
            <button type="button" className="button" onClick={() => dispatch({ do: "seek-sneaks" })}>
              Search every position
            </button>
          </p>
        </>
      )}
      {trouble !== null && <p className="error">Sneak paths could not be worked out: {trouble}</p>}
      {isSeeking && isOld && <Working words="Opening one place after the other in every position" />}
      {isSeeking && !isOld && answer && (
        <>
          <p className="small">
            {answer.sneaks.length === 0 ? "None" : counted(answer.sneaks.length, "sneak path")} with{" "}
            {counted(answer.all - 1, "opening")} in {counted(answer.positions, "position")}.
          </p>
          <ol>
            {answer.sneaks.map((sneak, index) => (
              <SneakRow key={index} circuit={circuit} sneak={sneak} />
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

/** One sneak path in words; pressed, the place is opened as a fault, the drawing set to the position and the load chosen. */
function SneakRow({ circuit, sneak }: { readonly circuit: Circuit; readonly sneak: Sneak }) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const reached = sneak.loads[0]?.part ?? sneak.wires[0]?.wire;
  const show = (): void => {
    for (const fault of sneak.openings[0]?.faults ?? []) make((bench) => plantFault(bench, faultText(fault)));
    make((bench) => setUp(bench, sneak.condition));
    if (reached !== undefined) dispatch({ do: "find-named", id: reached });
  };
  return (
    <li>
      <p>{sneakSaid(circuit, sneak)}</p>
      <p className="caption">{pathSaid(sneak.path)}</p>
      <button type="button" className="button is-quiet is-low" onClick={show}>
        Show it
      </button>
    </li>
  );
}
