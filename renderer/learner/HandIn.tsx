import { useState } from "react";
import { LIMITS } from "../../schemas/limits.ts";
import { asPlainLine } from "../../schemas/plainLine.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";

/** Who hands in, and the file with the whole route. It can be saved before the verdict too, and then has none. */
export function HandIn({ isOver }: { readonly isOver: boolean }) {
  const { dispatch } = useAppStore();
  const learner = useLearning((learning) => learning.learner);
  const own = useApp(({ settings }) => settings.person);
  const [typed, setTyped] = useState(learner || own);
  const keep = (): void => {
    const name = asPlainLine(typed);
    setTyped(name);
    if (name !== learner) dispatch({ do: "name-learner", learner: name });
  };
  return (
    <form
      className="learner-handin"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
        dispatch({ do: "save-handin" });
      }}
    >
      <h3>{SAY.handIn}</h3>
      <label className="field">
        <input
          value={typed}
          maxLength={LIMITS.labelLength}
          placeholder={SAY.yourName}
          aria-label={SAY.yourName}
          autoComplete="name"
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
        />
      </label>
      <button type="submit" disabled={typed.trim() === ""} className={isOver ? "button is-main" : "button"}>
        <Icon name="save" size={16} />
        {SAY.save}
      </button>
      <p className="small">{typed.trim() === "" ? SAY.nameWanted : isOver ? SAY.handInAbout : SAY.handInOpen}</p>
    </form>
  );
}
