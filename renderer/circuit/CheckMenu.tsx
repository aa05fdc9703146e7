import { useState } from "react";
import type { Expectation, FunctionCheck } from "../../core/circuit/circuit.ts";
import { changeCheck } from "../../core/edit/commands/changeCheck.ts";
import { removeCheck } from "../../core/edit/commands/removeCheck.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsk, useAsked } from "../editor/useAsk.ts";
import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { circuitNow } from "../state/views.ts";
import { expectationsOf } from "./checking.ts";
import { expectedWord } from "./checkLabel.ts";
import { Renaming } from "./Renaming.tsx";
import { RowMenu } from "./RowMenu.tsx";
import { useFocusBack } from "./useFocusBack.ts";

/** What can be done with a function check: another name, the condition as it is set now, another thing to do, delete. */
export function CheckMenu({ check }: { readonly check: FunctionCheck }) {
  const plain = useAsk();
  const { ask, trouble } = useAsked();
  const [changing, setChanging] = useState<"label" | "expect" | null>(null);
  const { id, label } = check;
  const done = (): void => setChanging(null);
  return (
    <>
      <RowMenu
        label={`More for ${label}`}
        acts={[
          { icon: "rename", words: "Rename", act: () => setChanging("label") },
          {
            icon: "save",
            words: "Condition as it is set now",
            act: () => ask((bench) => changeCheck(bench, id, { condition: bench.condition })),
          },
          { icon: "edit", words: "What it should do", act: () => setChanging("expect") },
          { icon: "bin", words: "Delete", act: () => ask((bench) => removeCheck(bench, id)) },
        ]}
      />
      {changing === "label" && (
        <Renaming
          name={`Name of ${label}`}
          value={label}
          take={(typed) => plain((bench) => changeCheck(bench, id, { label: typed }))}
          close={done}
        />
      )}
      {changing === "expect" && (
        <ExpectChoice
          check={check}
          choose={(expect) => ask((bench) => changeCheck(bench, id, { expect }))}
          close={done}
        />
      )}
      <Trouble words={trouble} />
    </>
  );
}

interface Choosing {
  readonly check: FunctionCheck;
  readonly choose: (expect: Expectation) => void;
  readonly close: () => void;
}

function ExpectChoice({ check, choose, close }: Choosing) {
  const { load, expect, label } = check;
  const focusBack = useFocusBack();
  const circuit = useApp(circuitNow);
  const possible = useApp((state) => expectationsOf(benchOf(state), load));
  return (
    <label className="inline-select">
      <span className="unseen">What should be seen: {label}</span>
      <select
        // biome-ignore lint/a11y/noAutofocus: the person has just asked for this
        autoFocus
        value={expect}
        onBlur={close}
        onChange={(event) => choose(event.target.value as Expectation)}
        onKeyDown={(event) => {
          if (event.key !== "Escape" && event.key !== "Enter") return;
          event.preventDefault();
          focusBack();
        }}
      >
        {(possible.includes(expect) ? possible : [expect, ...possible]).map((each) => (
          <option key={each} value={each}>
            {circuit && expectedWord(circuit, load, each)}
          </option>
        ))}
      </select>
    </label>
  );
}
