import { EventEmitter } from "node:events";

type Handler = (event: object, ...given: readonly unknown[]) => unknown;

const handlers = new Map<string, Handler>();

/** What pages call. */
export const ipcMain = Object.assign(new EventEmitter(), {
  handle: (channel: string, handler: Handler): void => {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
});

/** What the program answers to a call on a channel; rejects where it does not. */
export async function invoked(channel: string, event: object, given: readonly unknown[]): Promise<unknown> {
  const handler = handlers.get(channel);
  if (!handler) throw new Error(`No handler registered for '${channel}'`);
  return handler(event, ...given);
}
