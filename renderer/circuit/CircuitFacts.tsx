import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { changeColourCodes } from "../../core/edit/commands/changeColourCodes.ts";
import { changeRevision } from "../../core/edit/commands/changeRevision.ts";
import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import { changeVehicle } from "../../core/edit/commands/changeVehicle.ts";
import { changeVolts } from "../../core/edit/commands/changeVolts.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { ValueField } from "../panels/ValueField.tsx";

const COLOUR_CODES: Readonly<Record<Circuit["colourCodes"], string>> = {
  iec60757: "IEC 60757: BK, BN, RD",
  din72551: "DIN 72551: BK, BN, RD, BL",
  german: "German: sw, br, rt",
  japanese: "Japanese: B, Br, R",
  "north-american": "North American: BLK, BRN, RED",
  free: "As typed, no set",
};

/** What the circuit is of: title, vehicle, nominal volts, colour codes and revision. */
export function CircuitFacts({ circuit }: { readonly circuit: Circuit }) {
  const { title, vehicle = "", revision } = circuit;
  return (
    <div className="circuit-facts">
      <ValueField label="Title" value={title} change={(typed) => (bench) => changeTitle(bench, typed)} />
      <ValueField
        label="Vehicle"
        value={vehicle}
        usual="make, model, year"
        change={(typed) => (bench) => changeVehicle(bench, typed)}
      />
      <ValueField
        label="Revision"
        value={revision === undefined ? "" : String(revision)}
        usual="none"
        change={(typed) => (bench) => changeRevision(bench, typed)}
      />
      <NominalVolts volts={circuit.nominalVolts} />
      <ColourCodes codes={circuit.colourCodes} />
    </div>
  );
}

const USUAL_VOLTS: readonly number[] = [12, 24];

function NominalVolts({ volts }: { readonly volts: number }) {
  const { ask, trouble } = useAsked();
  const [isOther, setIsOther] = useState(false);
  const isOwn = isOther || !USUAL_VOLTS.includes(volts);
  const choose = (value: number): void => {
    setIsOther(value === 0);
    if (value !== 0) ask((bench) => changeVolts(bench, String(value)));
  };
  return (
    <>
      <Choice
        title="Nominal volts"
        now={isOwn ? 0 : volts}
        choices={[...USUAL_VOLTS.map((each) => [each, `${each}\u00A0V`] as const), [0, "Other"]]}
        onChoose={choose}
      />
      {isOwn && (
        <ValueField
          label="Other volts"
          value={String(volts)}
          unit="V"
          change={(typed) => (bench) => changeVolts(bench, typed)}
        />
      )}
      <Trouble words={trouble} />
    </>
  );
}

function ColourCodes({ codes }: { readonly codes: Circuit["colourCodes"] }) {
  const { ask, trouble } = useAsked();
  return (
    <>
      <SelectChoice
        title="Colour codes"
        now={codes}
        choices={Object.entries(COLOUR_CODES)}
        onChoose={(next) => ask((bench) => changeColourCodes(bench, next as Circuit["colourCodes"]))}
      />
      <p className="caption">Wires are written anew in another set; a colour that it does not know stays as it is.</p>
      <Trouble words={trouble} />
    </>
  );
}
