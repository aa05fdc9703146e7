import { bytesOf } from "../host/base64.ts";
import type { Page } from "./going.ts";
import { openFile } from "./openFile.ts";
import type { AppStore } from "./store.ts";

/** What a page does where its host has no dialogs: its own field for files, and handing files to the browser. */
export function pageActs(store: () => Pick<AppStore, "dispatch">, classId: string): Page {
  return {
    classId,
    openClass(where) {
      const isWindow = where === "window" || (where === "any" && hasSecondScreen());
      if (isWindow) {
        const size = `popup,width=${CLASS_SIZE.width},height=${CLASS_SIZE.height}`;
        return window.open(`class.html#${classId}`, `class-${classId}`, size) ? "window" : "forbidden";
      }
      document.documentElement.requestFullscreen().catch(() => {});
      return "here";
    },
    closeClass() {
      if (document.fullscreenElement) void document.exitFullscreen().catch(() => {});
    },
    chooseFile() {
      const field = document.createElement("input");
      field.type = "file";
      field.accept = ".json,.wirefathom,application/json";
      field.addEventListener("change", () => {
        const file = field.files?.[0];
        if (file) void openFile(store(), file);
      });
      field.click();
    },
    download(name, content, encoding) {
      const bytes = encoding === "text" ? content : bytesOf(content);
      const address = URL.createObjectURL(new Blob([bytes]));
      const link = document.createElement("a");
      link.href = address;
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(address), 60_000);
    },
  };
}

/** Size that a class window begins with: it is drawn to the other screen and fills that. */
const CLASS_SIZE = { width: 1280, height: 720 } as const;

/** Whether the browser knows of a second screen (Window Management, a working draft of the W3C). */
function hasSecondScreen(): boolean {
  return "isExtended" in window.screen && window.screen.isExtended === true;
}
