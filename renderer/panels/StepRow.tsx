import { memo } from "react";
import type { WireState } from "../../core/base/states.ts";
import type { Minutes } from "../../core/base/units.ts";
import { DRAIN_WORDS } from "../../core/base/words/drain.ts";
import { SCAN_WORDS } from "../../core/base/words/scan.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { milliampsText } from "../../core/diagnose/drain.ts";
import { probeText } from "../../core/diagnose/reading.ts";
import { isBySense, type Step } from "../../core/diagnose/step.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import { ReadingEntry } from "../diagnose/ReadingEntry.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { minutesText } from "../words/figures.ts";
import { closedLeads, detourWords, senseWords, settingWords, sweepSetting, sweptWords } from "../words/step.ts";
import { Caution } from "./Caution.tsx";
import { ConnectorFace } from "./ConnectorFace.tsx";
import { Expected } from "./Expected.tsx";
import { Leads } from "./Leads.tsx";
import { StepPage } from "./StepPage.tsx";
import { Sweep } from "./Sweep.tsx";
import { WireCode } from "./WireCode.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly step: Step;
  readonly states: readonly WireState[];
  /** Controls that some row moves. */
  readonly moved: readonly string[];
  /** All rows: a reading that is typed may name another. */
  readonly steps: readonly Step[];
  /** Minutes more that are expected if it is read now in place of the row offered; null where it is that row. */
  readonly detour: Minutes | null;
  /** A reading was taken in this row. */
  readonly onTaken: () => void;
}

/** One row of the probe order; the active one is opened out with the connector's face and the leads. */
export const StepRow = memo(function StepRow({ circuit, step, states, moved, steps, detour, onTaken }: Shown) {
  const { dispatch } = useAppStore();
  const isActive = useApp(({ open }) => open?.step === step.number);
  const isHovered = useApp(({ open }) => open?.hovered?.is === "point" && open.hovered.id === step.point);
  const look = ["step", isActive ? "is-active" : "", isHovered && !isActive ? "is-hovered" : ""].join(" ");
  const go = (): void => dispatch({ do: "go-to-step", step: step.number });
  return (
    <li
      className={look}
      onPointerEnter={() => dispatch({ do: "hover", thing: { is: "point", id: step.point } })}
      onPointerLeave={() => dispatch({ do: "hover", thing: null })}
    >
      <span className={isActive ? "knot is-next figures" : "knot figures"} aria-hidden="true">
        {step.number}
      </span>
      <div className="step-body">
        <button type="button" className="step-head" aria-current={isActive ? "step" : undefined} onClick={go}>
          <StepHead circuit={circuit} step={step} states={states} isActive={isActive} />
        </button>
        {step.sweepOf !== null && <Sweep step={step} states={states} />}
        {isActive ? (
          <Opened circuit={circuit} step={step} steps={steps} moved={moved} detour={detour} onTaken={onTaken} />
        ) : (
          <Closed circuit={circuit} step={step} moved={moved} />
        )}
      </div>
    </li>
  );
});

/** Tells the row of one order from that of the next: what was typed for one is no reading of another. */
function rowText({ point: red, black, instrument, lampTo, settings }: Step): string {
  return settings.map(({ condition }) => probeText({ red, black, instrument, lampTo, condition })).join();
}

function StepHead({
  circuit,
  step,
  states,
  isActive,
}: Pick<Shown, "circuit" | "step" | "states"> & { readonly isActive: boolean }) {
  const mm2 = isActive ? wiresAt(circuit, step.point)[0]?.mm2 : undefined;
  const first = step.settings[0];
  return (
    <>
      <span className="unseen">Step {step.number}: </span>
      <b className="together">{step.point}</b>
      {step.colour !== null && (
        <span className="step-code">
          <WireCode code={step.colour} set={circuit.colourCodes} />
          {mm2 !== undefined && <span className="figures">{mm2}</span>}
        </span>
      )}
      <span className="step-expected">
        {step.sweepOf === null ? (
          first && <Expected setting={first} state={states[0]} />
        ) : (
          <span className="step-kind">sweep of {sweptWords(circuit, step.sweepOf)}</span>
        )}
      </span>
    </>
  );
}

function setOf({ circuit, step, moved }: Pick<Shown, "circuit" | "step" | "moved">): string {
  if (step.sweepOf !== null) return sweepSetting(circuit, step);
  return settingWords(circuit, step.settings[0]?.condition ?? {}, moved);
}

function Closed({ circuit, step, moved }: Pick<Shown, "circuit" | "step" | "moved">) {
  return (
    <>
      <p className="step-set">
        <span className="step-minutes figures">{minutesText(step.minutes)}</span>
        {setOf({ circuit, step, moved })} · {closedLeads(step)}
      </p>
      <p className="step-why">{step.why}</p>
      {step.hands === 2 && <p className="step-why">Needs a second pair of hands.</p>}
      {step.cautions.map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
    </>
  );
}

/** What the meter is set to where no lamp hangs beside it. */
const METERS: Readonly<Partial<Record<Step["instrument"], string>>> = {
  "meter volts": "Meter on volts",
  "meter ohms": "Meter on ohms, plug apart and nothing fed",
  clamp: "Clamp round this one wire, set to nought first",
};

function Opened({ circuit, step, steps, moved, detour, onTaken }: Omit<Shown, "states">) {
  const lamp = step.lampTo === "black" ? `No meter, ${step.instrument}` : `Meter on volts, ${step.instrument}`;
  const meter = METERS[step.instrument] ?? lamp;
  const isBackProbed = step.connector !== null && step.instrument !== "meter ohms" && step.instrument !== "clamp";
  const plug = isBackProbed ? " Plug left in, back-probe from the wire side." : "";
  return (
    <>
      {detour !== null && <p className="small step-detour">{detourWords(detour, steps[0]!.number)}</p>}
      <StepPage circuit={circuit} step={step} />
      {isBySense(step.instrument) ? (
        <>
          <p className="small">
            {senseWords(circuit, step)}, {minutesText(step.minutes)}.
          </p>
          {step.instrument === "scan tool" && <p className="small">{SCAN_WORDS.means}</p>}
        </>
      ) : (
        <div className="step-face">
          <ConnectorFace circuit={circuit} point={step.point} />
          <div className="step-leads">
            <Leads step={step} />
            <p className="caption">
              {step.ohms === null ? meter : "Meter on millivolts"}, {minutesText(step.minutes)}.
              {step.ohms === null ? plug : ` ${DRAIN_WORDS.scale(milliampsText(0.001 / step.ohms))}.`}
            </p>
          </div>
        </div>
      )}
      <dl className="facts">
        <dt>Set</dt>
        <dd>{setOf({ circuit, step, moved })}</dd>
      </dl>
      {step.hands === 2 && <Caution>Needs a second pair of hands.</Caution>}
      {step.cautions.map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      <ReadingEntry key={rowText(step)} circuit={circuit} step={step} steps={steps} onTaken={onTaken} />
      <dl className="facts">
        <dt>Why</dt>
        <dd>{step.why}</dd>
      </dl>
    </>
  );
}
