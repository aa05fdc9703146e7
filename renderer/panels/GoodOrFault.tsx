import { showFaults } from "../../core/edit/commands/showFaults.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { hasFaults, showsFaults, suspectNow, withSuspectNow } from "../state/views.ts";

/**
 * The one switch between the circuit with nothing wrong, the circuit with the faults put in, and the circuit as it would be
 * with the suspect in sight; absent while there is neither fault nor suspect.
 */
export function GoodOrFault() {
  const { dispatch } = useAppStore();
  const make = useMake();
  const isFaulty = useApp(hasFaults);
  const isAsItIs = useApp(showsFaults);
  const suspect = useApp(suspectNow);
  const isWith = useApp(withSuspectNow);
  if (!isFaulty && !suspect) return null;
  const show = (isShown: boolean): void => {
    dispatch({ do: "with-suspect", isWith: false });
    if (isFaulty) make((bench) => showFaults(bench, isShown));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="segments good-or-fault" role="group" aria-label="Wires as they would be with">
      <Choice words="Nothing wrong" isRest isOn={!isWith && !(isFaulty && isAsItIs)} choose={() => show(false)} />
      {isFaulty && <Choice words="The fault" isOn={!isWith && isAsItIs} choose={() => show(true)} />}
      {suspect && (
        <Choice words={suspect.title} isOn={isWith} choose={() => dispatch({ do: "with-suspect", isWith: true })} />
      )}
    </div>
  );
}

interface Offered {
  readonly words: string;
  readonly isOn: boolean;
  /** The choice at rest is raised; any other has the accent. */
  readonly isRest?: boolean;
  readonly choose: () => void;
}

function Choice({ words, isOn, isRest = false, choose }: Offered) {
  const look = isOn ? (isRest ? " is-now" : " is-thrown") : "";
  return (
    <button type="button" className={`segment${look}`} aria-pressed={isOn} title={words} onClick={choose}>
      <span className="good-or-fault-words">{words}</span>
    </button>
  );
}
