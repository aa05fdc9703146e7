import { type FormEvent, useState } from "react";
import { refuse } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { drawnFrom } from "../../core/lesson/draw.ts";
import { DIFFICULTIES } from "../../core/lesson/graded.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { LabelledField } from "../panels/LabelledField.tsx";
import { useApp } from "../state/AppContext.tsx";
import { notProbedNow } from "../state/views.ts";
import type { Cupboard } from "./cupboard.ts";
import { Progress } from "./Progress.tsx";
import { useCupboard } from "./useCupboard.ts";
import { DIFFICULTY_TITLES } from "./words.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly cupboard: Cupboard;
}

/** Which complaint the fault is to hide behind, and one drawn by seed and difficulty: the same seed draws the same fault for everyone. */
export function DrawFault({ circuit, cupboard }: Shown) {
  const { ask } = useCupboard();
  const { behind, done, graded } = cupboard;
  const isOld = graded !== null && graded.circuit !== wiringOf(circuit);
  const notProbed = useApp(notProbedNow);
  if (notProbed !== null) return <p className="small cupboard-line">{notProbed}</p>;
  if (circuit.checks.length === 0)
    return <p className="small cupboard-line">Add a function check first: an exercise needs one that fails.</p>;
  return (
    <section className="cupboard-draw" aria-label="Draw a fault">
      <SelectChoice
        title="Behind which complaint"
        now={behind ?? ""}
        choices={[["", "Any: all faults by place"], ...circuit.checks.map(({ id, label }) => [id, label] as const)]}
        onChoose={(check) =>
          ask(check === "" ? { act: "set", change: { behind: null, graded: null } } : { act: "grade", check })
        }
      />
      {done !== null && <Progress words="Trying every fault" done={done} stop={() => ask({ act: "stop-grading" })} />}
      {isOld && behind !== null && done === null && (
        <p className="small cupboard-line">
          The wiring was changed since these were graded.{" "}
          <button type="button" className="button is-low" onClick={() => ask({ act: "grade", check: behind })}>
            Grade them anew
          </button>
        </p>
      )}
      {graded !== null && !isOld && <DrawOne circuit={circuit} cupboard={cupboard} />}
    </section>
  );
}

const ANY = ["any", ...DIFFICULTIES] as const;

function DrawOne({ circuit, cupboard: { graded, difficulty, seed, behind } }: Shown) {
  const { ask } = useCupboard();
  const [trouble, setTrouble] = useState<string | null>(null);
  const draw = (event: FormEvent): void => {
    event.preventDefault();
    const isWhole = /^\d{1,9}$/.test(seed.trim());
    const number = Number(seed);
    const wanted = difficulty === "any" ? undefined : difficulty;
    const drawn = isWhole ? drawnFrom(circuit, graded?.faults ?? [], number, wanted) : undefined;
    const check = circuit.checks.find(({ id }) => id === behind)?.label ?? "";
    const refusal = isWhole
      ? refuse("exercise-none", { check }).refusal
      : refuse("whole-number", { option: "The seed", typed: seed || "nothing" }).refusal;
    setTrouble(drawn ? null : sentence(refusal));
    if (drawn) ask({ act: "take", fault: drawn.possible, seed: number });
  };
  return (
    <form className="cupboard-lot" onSubmit={draw}>
      <Choice
        title="How hard to find"
        now={difficulty}
        choices={ANY.map((each) => [each, DIFFICULTY_TITLES[each]])}
        onChoose={(next) => ask({ act: "set", change: { difficulty: next } })}
      />
      <LabelledField
        label="Seed"
        value={seed}
        typed="number"
        trouble={trouble === null ? undefined : "cupboard-seed"}
        onChange={(next) => ask({ act: "set", change: { seed: next } })}
      />
      <Trouble words={trouble} id="cupboard-seed" />
      <div className="value-acts">
        <button type="submit" className="button is-low">
          Draw a fault
        </button>
        <span className="small">The same seed draws the same fault.</span>
      </div>
    </form>
  );
}
