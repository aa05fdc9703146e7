import { useMemo } from "react";
import type { Circuit, Scene } from "../../core/circuit/circuit.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { AT_START } from "../../core/lesson/play.ts";
import { liveOf } from "../../core/live/live.ts";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { focusIds, pageOf } from "./focus.ts";
import { FIRST_LESSON, placeOfScene, playNow } from "./lesson.ts";
import { pictureOf } from "./picture.ts";
import { SvgText } from "./SvgText.tsx";

/** Size of the picture of the next scene, and of its words, px. */
const PREVIEW = { width: 380, height: 170, words: 13 } as const;

/** The scene that is shown and the one that comes next, which the class does not see yet. */
export function ClassNow({ circuit }: { readonly circuit: Circuit }) {
  const condition = useApp(conditionNow);
  const play = useApp(({ open }) => open?.lesson.play ?? AT_START);
  const { scenes } = circuit;
  const at = placeOfScene(circuit, condition, play);
  const now = scenes[at];
  const next = scenes[playNow(circuit, condition, play).at + 1];
  return (
    <>
      <section className="class-scene" aria-label="Shown now">
        <h3 className="place-name">
          {now ? `Now, scene ${at + 1} of ${scenes.length}` : "Now, as it was thrown by hand"}
        </h3>
        <p>
          <b>{now?.label ?? conditionPhrase(circuit, condition)}</b>
        </p>
        {now?.caption !== undefined && <p className="small">{now.caption}</p>}
        <Notes scene={now} />
      </section>
      {next ? (
        <NextScene circuit={circuit} scene={next} />
      ) : (
        <p className="class-scene small">This is the last scene.</p>
      )}
    </>
  );
}

/** What the instructor noted to a scene, which the class never sees. */
function Notes({ scene }: { readonly scene: Scene | undefined }) {
  if (scene?.notes === undefined) return null;
  return (
    <p className="class-notes small">
      <b>Your notes:</b> {scene.notes}
    </p>
  );
}

function NextScene({ circuit, scene }: { readonly circuit: Circuit; readonly scene: Scene }) {
  const palette = useApp(({ theme }) => theme);
  const look = useApp(({ settings }) => settings.look);
  const shownPage = useApp(({ open }) => open?.page ?? "");
  const focus = useApp(({ open }) => open?.lesson.focus ?? FIRST_LESSON.focus);
  const picture = useMemo(() => {
    const ids = focusIds(circuit, focus, scene, scene.condition);
    const page = pageOf(circuit, ids, shownPage);
    const live = liveOf(wiringOf(circuit), scene.condition);
    return pictureOf({ circuit, page, live, dark: null, palette, look, focus: ids, ...PREVIEW });
  }, [circuit, scene, palette, look, shownPage, focus]);
  return (
    <section className="class-scene" aria-label="Next scene">
      <h3 className="place-name">Next</h3>
      <p>
        <b>{scene.label}</b>
      </p>
      <p className="small">{conditionPhrase(circuit, scene.condition)}</p>
      {picture && <SvgText className="class-preview" text={picture.lit} />}
      {scene.caption !== undefined && <p className="small">{scene.caption}</p>}
      <Notes scene={scene} />
    </section>
  );
}
