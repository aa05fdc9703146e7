import { useEffect } from "react";
import { useRoom } from "../panels/useRoom.ts";
import { LearnerBar } from "./LearnerBar.tsx";
import { LearnerSheet } from "./LearnerSheet.tsx";
import { LearnerSide } from "./LearnerSide.tsx";
import { LearnerStatus } from "./LearnerStatus.tsx";
import { LearnerStrip } from "./LearnerStrip.tsx";

/** The learner's bench: the circuit as drawn, and the vehicle of the exercise to work on. */
export function LearnerView() {
  const { width, height } = useRoom();
  useEffect(() => {
    // What had the focus in the library is gone with it.
    if (document.activeElement === document.body)
      document.querySelector<HTMLElement>(".sheet-canvas")?.focus({ preventScroll: true });
  }, []);
  return (
    <div className="app is-learner" data-width={width} data-height={height}>
      <LearnerBar />
      <main className="bench">
        <LearnerSheet />
      </main>
      <LearnerSide />
      <LearnerStrip />
      <LearnerStatus />
    </div>
  );
}
