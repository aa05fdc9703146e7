import { readdirSync } from "node:fs";
import type { RunningHost } from "../bench/window/host.ts";

/** What the host holds at a moment. */
export interface HostHolds {
  /** Living objects after a forced collection, MB. */
  readonly heapMb: number;
  /** All that the process has of the machine's memory, MB; null where the system does not tell. */
  readonly rssMb: number | null;
  /** Sockets, timers, files and threads that keep it alive. */
  readonly handles: number;
  /** Open files and sockets of the process; null where the system does not tell. */
  readonly files: number | null;
}

/** Asks the host's inspector; close it at the end. */
export interface HostInspector {
  look(): Promise<HostHolds>;
  close(): void;
}

const ASKED = `JSON.stringify({
  heap: process.memoryUsage().heapUsed, rss: process.memoryUsage().rss, handles: process.getActiveResourcesInfo().length
})`;

/** Speaks with the inspector of a host that was started with one. */
export async function inspect({ pid, inspector }: RunningHost): Promise<HostInspector> {
  if (inspector === null) throw new Error("this host was started without an inspector");
  const socket = new WebSocket(inspector);
  await new Promise((opened, failed) => {
    socket.addEventListener("open", opened, { once: true });
    socket.addEventListener("error", failed, { once: true });
  });
  let count = 0;
  const answers = new Map<number, (result: unknown) => void>();
  socket.addEventListener("message", ({ data }) => {
    const { id, result } = JSON.parse(String(data)) as { readonly id: number; readonly result: unknown };
    answers.get(id)?.(result);
    answers.delete(id);
  });
  const send = (method: string, params: object = {}): Promise<unknown> =>
    new Promise((answered) => {
      count += 1;
      answers.set(count, answered);
      socket.send(JSON.stringify({ id: count, method, params }));
    });
  return {
    look: async () => {
      await send("HeapProfiler.collectGarbage");
      const { result } = (await send("Runtime.evaluate", { expression: ASKED })) as {
        readonly result: { readonly value: string };
      };
      const { heap, rss, handles } = JSON.parse(result.value) as Record<"heap" | "rss" | "handles", number>;
      return { heapMb: heap / 1e6, rssMb: rss / 1e6, handles, files: filesOf(pid) };
    },
    close: () => socket.close(),
  };
}

/** Open files and sockets of a process, where the system tells. */
function filesOf(pid: number): number | null {
  try {
    return readdirSync(`/proc/${pid}/fd`).length;
  } catch {
    return null;
  }
}
