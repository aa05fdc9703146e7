import { registerHooks } from "node:module";

const DOUBLE = new URL("double.ts", import.meta.url).href;

// Loaded before anything else, in threads too.
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === "electron" ? { url: DOUBLE, shortCircuit: true } : next(specifier, context),
});
