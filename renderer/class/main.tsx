import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "../style/font.css";
import "../style/tokens.css";
import "../style/base.css";
import "../style/class.css";
import { ClassPage } from "./ClassPage.tsx";
import { channelName, lockName } from "./classId.ts";

const root = document.querySelector("#app");
if (!root) throw new Error("broken invariant: the page has no place for the class view");
const id = location.hash.slice(1);

/** The instructor's window holds a lock as long as it lives: whoever else gets it knows that the window is gone. */
function whenGone(run: () => void): () => void {
  const watch = new AbortController();
  navigator.locks.request(lockName(id), { signal: watch.signal }, run).catch(() => {});
  return () => watch.abort();
}

createRoot(root).render(
  <StrictMode>
    <ClassPage channel={new BroadcastChannel(channelName(id))} whenGone={whenGone} />
  </StrictMode>,
);
