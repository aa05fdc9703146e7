import { useEffect, useMemo, useRef, useState } from "react";
import type { PartId } from "../../core/base/ids.ts";
import { controlKey, partAt } from "../../core/circuit/points.ts";
import { positionNow } from "../../core/edit/commands/throwControl.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Control, Part } from "../../core/parts/kind.ts";
import { PartValues } from "../panels/PartValues.tsx";
import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { circuitNow, conditionNow, liveShown } from "../state/views.ts";
import { positionTitle } from "../words/condition.ts";
import { DesignatorField } from "./DesignatorField.tsx";
import { EditorHead } from "./EditorHead.tsx";
import { ModuleEditor } from "./ModuleEditor.tsx";
import { PartPicture } from "./PartPicture.tsx";
import { PlugSection } from "./PlugSection.tsx";
import { takesPlug } from "./plugs.ts";
import { ReachFields } from "./ReachFields.tsx";
import { reachKey } from "./reaching.ts";
import { SwitchEditor } from "./SwitchEditor.tsx";
import { symbolPicture, withOne } from "./symbolPicture.ts";
import { tableControls } from "./tableControls.ts";
import { controlWords } from "./tableWords.ts";
import { useLeave } from "./useLeave.ts";

/**
 * Everything that is said of a part, in place of the drawing: what it is and how it is reached, what its table joins, and
 * the connector that carries it. Each change is an edit on the bench at once.
 */
export function PartEditor({ part: id, close }: { readonly part: PartId; readonly close: () => void }) {
  const circuit = useApp(circuitNow);
  const bench = useApp(benchOf);
  const place = useRef<HTMLElement>(null);
  const [preview, setPreview] = useState<string | null>(null);
  const [turned, setTurned] = useState(0);
  const part = circuit ? partAt(circuit, id) : undefined;
  useEffect(() => place.current?.focus(), []);
  useLeave(place, close);
  if (!circuit || !bench || !part) return null;
  const isModule = kindOf(part.kind)?.role === "electronics";
  const controls = tableControls(bench, part);
  const at = Math.min(turned, controls.length - 1);
  const hasMiddle = isModule || controls.length > 0;
  const hasPlug = takesPlug(part);
  const shape = `${hasMiddle ? "has-middle" : ""} ${hasPlug ? "has-plug" : ""}`;
  return (
    <main ref={place} tabIndex={-1} className={`editor ${shape}`} aria-label={`Editor of ${part.id}`}>
      <EditorHead circuit={circuit} part={part} close={close} />
      <div className="editor-column is-what">
        <Picture part={part} control={controls[at]} preview={preview} />
        <section className="values part-values" aria-label="What it is">
          <DesignatorField part={part} />
          <PartValues circuit={circuit} part={part} />
        </section>
        <ReachFields circuit={circuit} at={reachKey(circuit, part)} of={part.id} />
      </div>
      {hasMiddle && (
        <div className="editor-column is-table">
          {isModule ? (
            <ModuleEditor circuit={circuit} part={part} />
          ) : (
            <SwitchEditor
              key={part.id}
              circuit={circuit}
              part={part}
              controls={controls}
              at={at}
              onTurn={setTurned}
              onShow={setPreview}
            />
          )}
        </div>
      )}
      {hasPlug && (
        <div className="editor-column is-plug">
          <PlugSection key={part.id} circuit={circuit} part={part} />
        </div>
      )}
    </main>
  );
}

interface Pictured {
  readonly part: Part;
  /** The control whose table is shown; of a panel it alone is drawn. */
  readonly control: Control | undefined;
  /** Position of that control to be shown; null as it stands. */
  readonly preview: string | null;
}

/** The symbol as the part stands on the bench, or in the position that is previewed. */
function Picture({ part, control, preview }: Pictured) {
  const bench = useApp(benchOf);
  const condition = useApp(conditionNow);
  const live = useApp(liveShown);
  const look = useApp(({ settings }) => settings.look);
  const now = live?.parts.get(part.id);
  const picture = useMemo(() => {
    if (!bench) return null;
    const drawn = control ? withOne(part, control) : part;
    const alone = control && drawn !== part ? (positionNow(bench, controlKey(part, control)) ?? null) : null;
    const standing = preview ?? alone;
    const positions = standing === null ? null : { "": standing };
    return symbolPicture(drawn, bench.circuit.nominalVolts, { now, positions, condition }, look);
  }, [bench, part, control, preview, now, condition, look]);
  if (!picture) return null;
  const of = control && part.controls ? `${part.id}, ${controlWords(control)}` : part.id;
  const words = preview === null ? "as it stands now" : `in ${positionTitle(preview)}`;
  return (
    <div className="picture-card">
      <PartPicture picture={picture} words={`Symbol of ${of} ${words}`} />
      <span className="caption">
        {[control && part.controls ? controlWords(control) : "", preview === null ? "" : positionTitle(preview)]
          .filter((each) => each !== "")
          .join(", ")}
      </span>
    </div>
  );
}
