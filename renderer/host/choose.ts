import { electronHost } from "./electron.ts";
import type { Host } from "./host.ts";
import { loopbackHost } from "./loopback.ts";

/**
 * The host of this page: the program's window where its bridge is there, else the server that the page came from. Vite's own
 * server, for work on the page, has none, and gets one that forgets.
 */
export async function chooseHost(): Promise<Host> {
  if (window.wirefathom) return electronHost(window.wirefathom);
  if (!import.meta.env.DEV) return loopbackHost();
  const { memoryHost } = await import("./memory.ts");
  const { sampleCircuits } = await import("./samples.ts");
  return memoryHost(sampleCircuits(), () => new Date().toISOString());
}
