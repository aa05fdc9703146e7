import { bytesOf } from "../host/base64.ts";
import type { Page } from "./going.ts";
import { openFile } from "./openFile.ts";
import type { AppStore } from "./store.ts";

/** What a page does where its host has no dialogs: its own field for files, and handing files to the browser. */
export function pageActs(store: () => Pick<AppStore, "dispatch">): Page {
  return {
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
