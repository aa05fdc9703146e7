// Runs in a world of its own before the page's scripts, around the program's preload. `standinSend` is a binding of
// Chromium's to the double; what the double answers comes by `standinDone`.
(preload) => {
  const waiting = new Map();
  const apis = {};
  let count = 0;
  globalThis.standinDone = (id, error, value) => {
    const { resolve, reject } = waiting.get(id);
    waiting.delete(id);
    if (error === null) resolve(value);
    else reject(new Error(error));
  };
  const ipcRenderer = {
    invoke: (channel, ...given) =>
      new Promise((resolve, reject) => {
        count += 1;
        waiting.set(count, { resolve, reject });
        const { href } = location;
        globalThis.standinSend(JSON.stringify({ id: count, channel, given, href, isTop: window === top }));
      }),
  };
  addEventListener("standin-call", async ({ detail }) => {
    const { key, name, given, answer } = JSON.parse(detail);
    let said;
    try {
      said = { value: await apis[key][name](...given) };
    } catch (error) {
      said = { error: String(error?.message ?? error) };
    }
    dispatchEvent(new CustomEvent(answer, { detail: JSON.stringify(said) }));
  });
  const contextBridge = {
    exposeInMainWorld: (key, api) => {
      apis[key] = api;
      const names = Object.keys(api).filter((name) => typeof api[name] === "function");
      dispatchEvent(new CustomEvent("standin-expose", { detail: JSON.stringify({ key, names }) }));
    },
  };
  const require = (name) => {
    if (name === "electron") return { contextBridge, ipcRenderer };
    throw new Error(`a sandboxed preload has no module ${name}`);
  };
  const module = { exports: {} };
  if (window === top) preload(require, module, module.exports);
};
