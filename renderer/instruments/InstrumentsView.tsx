import { BENCH_INSTRUMENTS } from "../../core/base/words/instruments.ts";
import { layInstrument } from "../../core/edit/commands/layInstrument.ts";
import { INSTRUMENTS, type InstrumentName } from "../../core/live/instruments/clipped.ts";
import { HAND } from "../canvas/tool.ts";
import { CoveredUp } from "../panels/CoveredUp.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { clippedNow, coveredHere, notProbedNow } from "../state/views.ts";
import { Face } from "./Face.tsx";

/** What is shown of each instrument in the row to take one from. */
const ABOUT: Readonly<Record<InstrumentName, string>> = {
  voltmeter: "10 MΩ; it hardly loads what it reads",
  "small-lamp": "0.25 A",
  "heavy-lamp": "4 A",
  ohmmeter: "dead circuit only",
  jumper: "with a fuse of its own",
  "stand-in": "draws what you choose",
  clamp: "amps, nothing unplugged",
};

/** The instruments on the bench with what each shows, and the case they are taken from. */
export function InstrumentsView() {
  const { dispatch, getState } = useAppStore();
  const clipped = useApp(clippedNow);
  const notProbed = useApp(notProbedNow);
  const isCovered = useApp(coveredHere);
  const take = (instrument: InstrumentName): void => {
    dispatch({ do: "make", command: (bench) => layInstrument(bench, instrument) });
    const laid = benchOf(getState())?.clipped.at(-1);
    if (!laid || clipped.includes(laid)) return;
    const lead = instrument === "clamp" ? "jaws" : "red";
    dispatch({ do: "use-tool", tool: { is: "lead", instrument: laid.id, lead, from: null } });
  };
  return (
    <div className="view-scroll instruments">
      {notProbed !== null && <p className="caution-text">{notProbed}</p>}
      {isCovered && clipped.length > 0 && <CoveredUp what="What they show is" />}
      {clipped.map((each) => (
        <Face key={each.id} each={each} count={clipped.length} />
      ))}
      {notProbed === null && (
        <section className="instrument-case" aria-label="Take an instrument">
          <h2>{clipped.length === 0 ? "Take an instrument and clip it to the drawing" : "Take another"}</h2>
          <ul>
            {INSTRUMENTS.map((instrument) => (
              <li key={instrument}>
                <button type="button" className="menu-item" onClick={() => take(instrument)}>
                  <b>{BENCH_INSTRUMENTS[instrument]}</b>
                  <span className="menu-about">{ABOUT[instrument]}</span>
                </button>
              </li>
            ))}
          </ul>
          <p className="small">
            Leads stay on while switches are thrown. Lamps, jumpers and loads change the circuit as they would on the
            vehicle.
          </p>
        </section>
      )}
      <LetGo />
    </div>
  );
}

/** While a lead or the jaws of a clamp are in hand: where they go, and a way to leave them off. */
function LetGo() {
  const { dispatch } = useAppStore();
  const tool = useApp(({ open }) => open?.tool ?? HAND);
  if (tool.is !== "lead") return null;
  return (
    <p className="small clip-hint" role="status">
      {tool.lead === "jaws"
        ? "Press the wire that it goes round."
        : "Press a pin or a stud on the drawing; on a wire it goes to the nearer end."}
      <button type="button" className="button is-low" onClick={() => dispatch({ do: "use-tool", tool: HAND })}>
        Leave it off
      </button>
    </p>
  );
}
