import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { z } from "zod";
import "./style/index.css";
import { App } from "./App.tsx";
import { chooseHost } from "./host/choose.ts";
import { startPage } from "./startPage.ts";
import { AppProvider } from "./state/AppContext.tsx";

// The page's policy allows no code made from text, which the validator would otherwise use to be quick.
z.config({ jitless: true });

const root = document.querySelector("#app");
if (!root) throw new Error("broken invariant: the page has no place for the program");
const store = startPage(await chooseHost());
createRoot(root).render(
  <StrictMode>
    <AppProvider store={store}>
      <App />
    </AppProvider>
  </StrictMode>,
);
