/** What goes over the wire with a command or an event. */
export type Fields = Readonly<Record<string, unknown>>;

/** A way to Chromium by its protocol for developers' tools. A session is one page; without one, the whole browser. */
export interface Devtools {
  send<T = unknown>(method: string, fields?: Fields, session?: string): Promise<T>;
  on<T>(method: string, session: string, heard: (fields: T) => void): void;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
  readonly sessionId?: string;
}

/** Connects to the address that Chromium says on its start. */
export async function connectDevtools(address: string): Promise<Devtools> {
  const socket = new WebSocket(address);
  const waiting = new Map<number, PromiseWithResolvers<unknown>>();
  const listeners = new Map<string, ((fields: never) => void)[]>();
  let count = 0;
  await new Promise((resolve, reject) => {
    socket.onopen = resolve;
    socket.onerror = reject;
  });
  socket.onmessage = ({ data }) => {
    const { id, method, params, result, error, sessionId = "" } = JSON.parse(String(data)) as Message;
    if (id === undefined) for (const heard of listeners.get(`${sessionId} ${method}`) ?? []) heard(params as never);
    else if (error) waiting.get(id)?.reject(new Error(error.message));
    else waiting.get(id)?.resolve(result);
    if (id !== undefined) waiting.delete(id);
  };
  return {
    send: <T>(method: string, params: Fields = {}, sessionId?: string): Promise<T> => {
      const answer = Promise.withResolvers<unknown>();
      count += 1;
      waiting.set(count, answer);
      socket.send(JSON.stringify({ id: count, method, params, ...(sessionId !== undefined && { sessionId }) }));
      return answer.promise as Promise<T>;
    },
    on: (method, session, heard) => {
      const key = `${session} ${method}`;
      listeners.set(key, [...(listeners.get(key) ?? []), heard]);
    },
  };
}
