import { useCallback, useEffect, useRef } from "react";
import { Arranging } from "../arrange/Arranging.tsx";
import { SheetCanvas } from "../canvas/SheetCanvas.tsx";
import { EmptyPage } from "../draw/EmptyPage.tsx";
import { SelectionBar } from "../draw/SelectionBar.tsx";
import { Tools } from "../draw/Tools.tsx";
import { PartEditor } from "../editor/PartEditor.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useTime } from "../state/useTime.ts";
import { Bar } from "./Bar.tsx";
import { ControlsStrip } from "./ControlsStrip.tsx";
import { SheetSwitch } from "./SheetSwitch.tsx";
import { SidePanel } from "./SidePanel.tsx";
import { StatusLine } from "./StatusLine.tsx";
import { useRoom } from "./useRoom.ts";

/** The bench: the drawing with its bar, controls, status and what stands beside it; or the editor of one part in its place. */
export function BenchView() {
  const editing = useApp(({ open }) => open?.editing ?? null);
  const { dispatch } = useAppStore();
  const { width, height } = useRoom();
  const close = useCallback(() => dispatch({ do: "edit-part", part: null }), [dispatch]);
  useTime();
  const wasEditing = useRef(false);
  useEffect(() => {
    // What had the focus in the library is gone with it.
    if (document.activeElement === document.body) drawing()?.focus({ preventScroll: true });
  }, []);
  useEffect(() => {
    // Whoever leaves the editor goes on with the drawing.
    if (editing === null && wasEditing.current) drawing()?.focus({ preventScroll: true });
    wasEditing.current = editing !== null;
  }, [editing]);
  return (
    <div className="app" data-width={width} data-height={height}>
      <Bar />
      {editing === null ? <Drawing /> : <PartEditor part={editing} close={close} />}
      <StatusLine />
    </div>
  );
}

function drawing(): HTMLElement | null {
  return document.querySelector<HTMLElement>(".sheet-canvas");
}

function Drawing() {
  return (
    <>
      <main className="bench">
        <SheetCanvas />
        <EmptyPage />
        <div className="sheet-top">
          <Tools />
          <SelectionBar />
          <SheetSwitch />
        </div>
        <Arranging />
      </main>
      <SidePanel />
      <ControlsStrip />
    </>
  );
}
