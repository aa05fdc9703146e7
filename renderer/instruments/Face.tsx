import { clippedCautions } from "../../core/diagnose/clippedCautions.ts";
import { changeInstrumentAmps } from "../../core/edit/commands/changeInstrumentAmps.ts";
import { putInstrumentAway } from "../../core/edit/commands/putInstrumentAway.ts";
import { renewJumper } from "../../core/edit/commands/renewJumper.ts";
import type { Clipped } from "../../core/live/instruments/clipped.ts";
import { Caution } from "../panels/Caution.tsx";
import { Icon } from "../panels/Icon.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow, coveredHere, showingNow, traceNow } from "../state/views.ts";
import { besideFigure, instrumentTitle, shownFigure } from "../words/instrument.ts";
import { LampLight } from "./LampLight.tsx";
import { LeadRow } from "./LeadRow.tsx";
import { TraceLine } from "./TraceLine.tsx";

interface Shown {
  readonly each: Clipped;
  /** Instruments on the bench. */
  readonly count: number;
}

/** The face of an instrument: what it shows, where its leads are, what to mind. */
export function Face({ each, count }: Shown) {
  const make = useMake();
  const circuit = useApp(circuitNow);
  const showing = useApp((state) => showingNow(state, each.id));
  const trace = useApp((state) => traceNow(state, each.id));
  const isCovered = useApp(coveredHere);
  if (!circuit || !showing) return null;
  const name = instrumentTitle(each, count);
  const figure = isCovered ? "" : shownFigure(showing);
  const beside = isCovered ? "" : besideFigure(showing);
  const cautions = clippedCautions(circuit, each);
  return (
    <section className="instrument" aria-label={name}>
      <header>
        <h2>{name}</h2>
        <button
          type="button"
          className="icon-button is-small"
          aria-label={`Put the ${name.toLowerCase()} away`}
          title="Put it away"
          onClick={() => make((bench) => putInstrumentAway(bench, each.id))}
        >
          <Icon name="close" size={16} />
        </button>
      </header>
      <div className="instrument-face">
        <output className="instrument-figure" aria-live="polite">
          {showing.shows === "lamp" && !isCovered && <LampLight light={showing.light} />}
          {figure === "" ? "—" : figure}
        </output>
        {trace && trace.values.length > 1 && !isCovered && (
          <TraceLine id={each.id} trace={trace} unit={UNITS[showing.shows] ?? ""} />
        )}
      </div>
      {beside !== "" && <p className="small instrument-beside">{beside}</p>}
      {showing.shows === "jumper" && showing.melted && !isCovered && (
        <button type="button" className="button is-low" onClick={() => make((bench) => renewJumper(bench, each.id))}>
          Put a new fuse in
        </button>
      )}
      {each.instrument === "clamp" ? (
        <LeadRow each={each} lead="jaws" />
      ) : (
        <>
          <LeadRow each={each} lead="red" />
          <LeadRow each={each} lead="black" />
        </>
      )}
      {"amps" in each && each.amps !== undefined && (
        <ValueField
          label={each.instrument === "jumper" ? "Its fuse" : "Draws, at nominal volts"}
          value={String(each.amps)}
          unit="A"
          change={(typed) => (bench) => changeInstrumentAmps(bench, each.id, typed)}
        />
      )}
      {cautions.map((words) => (
        <Caution key={words}>{words}</Caution>
      ))}
    </section>
  );
}

const UNITS: Readonly<Partial<Record<string, "V" | "A" | "Ω">>> = {
  volts: "V",
  lamp: "V",
  jumper: "A",
  amps: "A",
  ohms: "Ω",
};
