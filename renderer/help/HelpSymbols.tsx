import { WIRE_STATES } from "../../core/base/states.ts";
import { HELP_WORDS, STATE_HELP } from "../../core/base/words/help/index.ts";
import { STATE_WORDS } from "../../core/base/words/sheet.ts";
import { KindPicture } from "../draw/DropTile.tsx";
import { kindMarks } from "../draw/kindMarks.ts";
import { kindsFor } from "../draw/offers.ts";
import { LineSample } from "../panels/LineSample.tsx";
import { StateGlyph } from "../panels/StateGlyph.tsx";
import { useApp } from "../state/AppContext.tsx";

/** Every wire state as the drawing shows it, with what it means. */
export function HelpStates() {
  return (
    <dl className="help-states">
      {WIRE_STATES.map((state) => (
        <div key={state}>
          <dt>
            <StateGlyph state={state} size={16} />
            <LineSample state={state} />
            {STATE_WORDS[state]}
          </dt>
          <dd>{STATE_HELP[state]}</dd>
        </div>
      ))}
      <div>
        <dt>
          <StateGlyph state="powered" alwaysFed size={16} />
          always fed
        </dt>
        <dd>{HELP_WORDS.alwaysFed}</dd>
      </div>
    </dl>
  );
}

/** At 12 V; a symbol does not depend on it. */
const VOLTS = 12;

/** Every kind of part with its symbol, in the look that is set. */
export function HelpSymbols() {
  const look = useApp(({ settings }) => settings.look);
  return kindsFor("").map(({ title, kinds }) => (
    <section key={title}>
      <h4>{title}</h4>
      <ul className="help-symbols">
        {kinds.map((kind) => (
          <li key={kind.name}>
            <KindPicture marks={kindMarks(kind, VOLTS, look)} size="part" />
            {kind.title}
          </li>
        ))}
      </ul>
    </section>
  ));
}
