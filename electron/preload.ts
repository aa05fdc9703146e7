import { contextBridge, ipcRenderer } from "electron";
import { BRIDGE, type Bridge, CALL_CHANNEL } from "../schemas/bridge.ts";
import { isCallName } from "../schemas/callNames.ts";

// Bundled to one file, since a sandboxed preload may load nothing but Electron's own part for pages. What goes over is
// text, so that the window takes in no more than a browser could send.
const bridge: Bridge = {
  call: async (name, argument) => {
    if (!isCallName(name)) throw new Error("there is no such call");
    return JSON.parse(await ipcRenderer.invoke(CALL_CHANNEL, name, JSON.stringify(argument) ?? "null")) as unknown;
  },
};
contextBridge.exposeInMainWorld(BRIDGE, bridge);
