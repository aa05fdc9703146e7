import { WIGGLE_WORDS as SAY } from "../../core/base/words/wiggle.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { HAPPENS } from "../../core/diagnose/comesAndGoes.ts";
import type { WiggleSheet } from "../../core/diagnose/wiggle.ts";
import { setWhen } from "../../core/edit/commands/setWhen.ts";
import { watchWords } from "../../core/paper/wiggle.ts";
import { Caution } from "../panels/Caution.tsx";
import { Tick } from "../panels/Tick.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { whenNow } from "../state/views.ts";
import { settingWords } from "../words/step.ts";
import { WiggleEntry } from "./WiggleEntry.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly wiggle: WiggleSheet;
  readonly isOld: boolean;
}

/** What fails sometimes: what brings it on, where the meter stays, and the places to move, likeliest per minute first. */
export function WiggleList({ circuit, wiggle, isOld }: Shown) {
  const make = useMake();
  const when = useApp(whenNow);
  return (
    <section className={isOld ? "wiggle is-old" : "wiggle"} aria-label={SAY.title}>
      <h3>{SAY.title}</h3>
      <fieldset className="wiggle-happens">
        <legend className="small">It comes with</legend>
        {HAPPENS.map((each) => (
          <span key={each} className="wiggle-when">
            <Tick
              isOn={when.includes(each)}
              name={TITLES[each]}
              onChange={(on) => make((bench) => setWhen(bench, each, on))}
            />
            {TITLES[each]}
          </span>
        ))}
      </fieldset>
      <p className="small">
        {settingWords(circuit, wiggle.condition, [])}. {watchWords(wiggle)}
      </p>
      {wiggle.cautions.map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      {wiggle.guilty !== null && <p className="wiggle-found">{SAY.movesIt(wiggle.guilty)}</p>}
      <ol className="readings">
        {wiggle.rows.map((row) => (
          <WiggleEntry key={row.place.id} circuit={circuit} row={row} watched={wiggle.watched} />
        ))}
      </ol>
      <p className="caption">{SAY.guesses}</p>
    </section>
  );
}

const TITLES = { hot: "Heat", wet: "Water", bumps: "Bumps" } as const;
