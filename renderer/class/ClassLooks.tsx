import type { Circuit } from "../../core/circuit/circuit.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import { loadsOf } from "../../core/live/branch.ts";
import { loadTitle } from "../branch/branchWords.ts";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Focus } from "./focus.ts";
import { FIRST_LESSON } from "./lesson.ts";

const HEIGHTS: readonly number[] = [CLASS_WORDS.least, 56, 64, 80, CLASS_WORDS.most];
/** Prefix of a choice that is a load, so that no part is taken for another choice. */
const LOAD = "load ";

/** What the class looks at, how high its words are, and on what ground. */
export function ClassLooks({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const { focus, hasCaption } = useApp(({ open }) => open?.lesson ?? FIRST_LESSON);
  const words = useApp(({ settings }) => settings.classWords);
  const isDark = useApp(({ classroom }) => classroom.isDark);
  const loads = loadsOf(wiringOf(circuit)).map(
    (id) => [`${LOAD}${id}`, `Branch of ${loadTitle(circuit, id)}`] as const,
  );
  return (
    <section className="class-looks" aria-label="How the class sees it">
      <SelectChoice
        title="In focus"
        now={focus.is === "load" ? `${LOAD}${focus.load}` : focus.is}
        onChoose={(chosen) => dispatch({ do: "teach", lesson: { focus: focusOf(chosen) } })}
        choices={[["scene", "As the scene says"], ["page", "All of the page"], ...loads]}
      />
      <Toggle
        words="Captions on the wall"
        about="Without them the drawing has more room."
        isOn={hasCaption}
        onChange={(on) => dispatch({ do: "teach", lesson: { hasCaption: on } })}
      />
      <Choice
        title={`Height of words on a screen of ${CLASS_WORDS.lines} lines`}
        now={words}
        onChoose={(classWords) => dispatch({ do: "set", settings: { classWords } })}
        choices={HEIGHTS.map((height) => [height, `${height}\u00A0px`] as const)}
      />
      <Choice
        title="Ground"
        now={isDark ? "dark" : "light"}
        onChoose={(ground) => dispatch({ do: "class", classroom: { isDark: ground === "dark" } })}
        choices={[
          ["light", "Light, for a lit room"],
          ["dark", "Dark"],
        ]}
      />
    </section>
  );
}

function focusOf(chosen: string): Focus {
  if (chosen.startsWith(LOAD)) return { is: "load", load: chosen.slice(LOAD.length) };
  return chosen === "page" ? { is: "page" } : { is: "scene" };
}
