import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { z } from "zod";
import "./style/index.css";
import { App } from "./App.tsx";
import { firstPaint } from "./firstPaint.ts";
import { chooseHost } from "./host/choose.ts";
import { PicturesProvider } from "./printed/PicturesContext.tsx";
import { picturesOf } from "./printed/pictures.ts";
import { watched } from "./report/mishaps.ts";
import { startPage } from "./startPage.ts";
import { AppProvider } from "./state/AppContext.tsx";
import { readAhead } from "./views.tsx";

// The page's policy allows no code made from text, which the validator would otherwise use to be quick.
z.config({ jitless: true });

const root = document.querySelector("#app");
if (!root) throw new Error("broken invariant: the page has no place for the program");
const host = await chooseHost();
const { store, mishaps } = startPage(host);
const pictures = picturesOf(
  host,
  () => watched(new Worker(new URL("./printed/paperWorker.ts", import.meta.url), { type: "module" }), mishaps),
  mishaps,
);
createRoot(root).render(
  <StrictMode>
    <AppProvider store={store}>
      <PicturesProvider pictures={pictures}>
        <App />
      </PicturesProvider>
    </AppProvider>
  </StrictMode>,
);

// What is behind the first picture is read once that stands.
void firstPaint().then(readAhead);
