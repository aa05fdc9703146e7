import type { Circuit } from "../../core/circuit/circuit.ts";
import { Swatch } from "../panels/Swatch.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import type { Command } from "../state/action.ts";
import { colourMeant, colourOffers, colourWords } from "../words/colour.ts";

interface Shown {
  readonly label: string;
  readonly value: string;
  readonly usual?: string;
  readonly codes: Circuit["colourCodes"];
  readonly change: (typed: string) => Command;
}

/** An insulation colour by its letters, with its sample and its words as they are typed, and what they may become. */
export function ColourField({ label, value, usual = "GY, or RD/YE", codes, change }: Shown) {
  return (
    <ValueField
      label={label}
      value={value}
      usual={usual}
      sample={(typed) => {
        const words = typed.trim() === "" ? "" : colourWords(typed, codes);
        return (
          words !== "" && (
            <span className="colour-sample unit">
              <Swatch code={typed} set={codes} />
              {words}
            </span>
          )
        );
      }}
      offers={(typed) => colourOffers(typed, codes)}
      change={(typed) => change(colourMeant(typed, codes))}
    />
  );
}
