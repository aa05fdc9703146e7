import { type DragEvent, type ReactNode, useRef, useState } from "react";
import { isHandinFile, takeFiles } from "../instructor/handinFiles.ts";
import { mayBePrinted } from "../printed/source.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { openFile } from "../state/openFile.ts";

/** A circuit file can be dropped anywhere on the page, and on an open circuit printed pages that go under its drawing. */
export function DropZone({ children }: { readonly children: ReactNode }) {
  const store = useAppStore();
  const isOpen = useApp(({ open }) => open !== null);
  const isLearning = useApp(({ learning }) => learning !== null);
  const [isOver, setOver] = useState(false);
  /** Entered elements less those left: the veil must not flicker while the pointer crosses children. */
  const depth = useRef(0);
  const hasFile = (event: DragEvent): boolean => event.dataTransfer.types.includes("Files");
  const leave = (): void => {
    depth.current = 0;
    setOver(false);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file is a help beside "Open a file"
    <div
      className="drop-zone"
      onDragEnter={(event) => {
        if (!hasFile(event)) return;
        depth.current += 1;
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!hasFile(event)) return;
        depth.current -= 1;
        if (depth.current <= 0) leave();
      }}
      onDragOver={(event) => hasFile(event) && event.preventDefault()}
      onDrop={(event) => {
        if (!hasFile(event)) return;
        // A field that takes files itself, as the photo of a place, has it already.
        const isTaken = event.isDefaultPrevented();
        event.preventDefault();
        leave();
        if (isTaken) return;
        const files = [...event.dataTransfer.files];
        const printed = isOpen ? files.filter(mayBePrinted) : [];
        if (files.some(isHandinFile)) void takeFiles(files).then((act) => store.dispatch({ do: "handins", act }));
        else if (printed.length > 0) store.dispatch({ do: "bring-in", files: printed });
        else if (!isOpen && !isLearning && files.length > 0 && files.every(mayBePrinted))
          store.dispatch({ do: "new-circuit", printed: files });
        else if (files[0]) void openFile(store, files[0]);
      }}
    >
      {children}
      {isOver && (
        <div className="drop-veil">
          <p>
            {isOpen
              ? "Let go to open the circuit file, or to put printed pages under the drawing"
              : "Let go to open the circuit file, or to begin a drawing over a printed page"}
          </p>
        </div>
      )}
    </div>
  );
}
