import { useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { FunctionCheck } from "../../core/circuit/circuit.ts";
import { changeCheck } from "../../core/edit/commands/changeCheck.ts";
import { removeCheck } from "../../core/edit/commands/removeCheck.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { useMake } from "../state/useMake.ts";
import { Renaming } from "./Renaming.tsx";
import { RowMenu } from "./RowMenu.tsx";

/** What can be done with a function check: another name, the condition as it is set now, delete. */
export function CheckMenu({ check }: { readonly check: FunctionCheck }) {
  const make = useMake();
  const { getState } = useAppStore();
  const [isRenaming, setRenaming] = useState(false);
  const { id, label } = check;
  const rename = (typed: string): string | null => {
    const bench = benchOf(getState());
    const edit = bench && changeCheck(bench, id, { label: typed });
    if (edit && !edit.ok) return sentence(edit.refusal);
    make((now) => changeCheck(now, id, { label: typed }));
    return null;
  };
  if (isRenaming)
    return <Renaming name={`Name of ${label}`} value={label} take={rename} close={() => setRenaming(false)} />;
  return (
    <RowMenu
      label={`More for ${label}`}
      acts={[
        { icon: "rename", words: "Rename", act: () => setRenaming(true) },
        {
          icon: "save",
          words: "Condition as it is set now",
          act: () => make((bench) => changeCheck(bench, id, { condition: bench.condition })),
        },
        { icon: "bin", words: "Delete", act: () => make((bench) => removeCheck(bench, id)) },
      ]}
    />
  );
}
