import { SheetCanvas } from "../canvas/SheetCanvas.tsx";
import { EmptyPage } from "../draw/EmptyPage.tsx";
import { SelectionBar } from "../draw/SelectionBar.tsx";
import { Tools } from "../draw/Tools.tsx";
import { Bar } from "./Bar.tsx";
import { ControlsStrip } from "./ControlsStrip.tsx";
import { SheetSwitch } from "./SheetSwitch.tsx";
import { SidePanel } from "./SidePanel.tsx";
import { StatusLine } from "./StatusLine.tsx";

/** The bench: the drawing with its bar, controls, status and what stands beside it. */
export function BenchView() {
  return (
    <div className="app">
      <Bar />
      <main className="bench">
        <SheetCanvas />
        <EmptyPage />
        <Tools />
        <SelectionBar />
        <SheetSwitch />
      </main>
      <SidePanel />
      <ControlsStrip />
      <StatusLine />
    </div>
  );
}
