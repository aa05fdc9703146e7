import { ScenePlayer } from "../circuit/ScenePlayer.tsx";
import { Empty } from "../panels/Empty.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { ClassLooks } from "./ClassLooks.tsx";
import { ClassNow } from "./ClassNow.tsx";
import { ClassPlanted } from "./ClassPlanted.tsx";
import { ClassPredict } from "./ClassPredict.tsx";
import { ClassWhere } from "./ClassWhere.tsx";

/** The instructor's own side of a class: what is shown and where, what comes next, and what the class is not to see. */
export function ClassView() {
  const circuit = useApp(circuitNow);
  const asked = useApp(({ open }) => open?.lesson.asked ?? null);
  if (!circuit) return null;
  const { scenes } = circuit;
  return (
    <div className="view-scroll class-view">
      <ClassWhere />
      {asked && <ClassPredict circuit={circuit} />}
      {scenes.length > 0 ? (
        <>
          <ScenePlayer circuit={circuit} />
          <ClassNow circuit={circuit} />
        </>
      ) : (
        <Empty title="No scenes yet">
          The class sees the drawing as it is thrown. Throw a switch and keep it as a scene under Condition, such as
          “Key on, lamp lit”.
        </Empty>
      )}
      {!asked && <ClassPredict circuit={circuit} />}
      <ClassLooks circuit={circuit} />
      <ClassPlanted circuit={circuit} />
    </div>
  );
}
