import type { ServerResponse } from "node:http";
import type { Duplex } from "node:stream";
import { HEADERS } from "../headers.ts";

/** Sends a whole response with the headers that every response has. */
export function reply(
  response: ServerResponse,
  status: number,
  body: string | Uint8Array,
  headers: Readonly<Record<string, string>> = {},
): void {
  const bytes = typeof body === "string" ? Buffer.from(body) : body;
  response.writeHead(status, {
    ...HEADERS,
    "content-type": "text/plain; charset=utf-8",
    "content-length": bytes.length,
    ...headers,
  });
  response.end(response.req.method === "HEAD" ? undefined : bytes);
}

/** Sends JSON. */
export function replyJson(response: ServerResponse, status: number, json: string): void {
  reply(response, status, json, { "content-type": "application/json; charset=utf-8" });
}

/** Refuses with one sentence, and lets go of the connection: nothing more of what was sent is read. */
export function turnAway(response: ServerResponse, status: number, sentence: string): void {
  reply(response, status, `${sentence}\n`, { connection: "close" });
}

/** Answers what is no HTTP, or did not arrive in time, with the headers that every response has, and hangs up: what it said, or null where nobody listened. */
export function hangUp(error: Error & { readonly code?: string }, socket: Duplex): string | null {
  if (!socket.writable || error.code === "ECONNRESET") {
    socket.destroy();
    return null;
  }
  const status = error.code === "ERR_HTTP_REQUEST_TIMEOUT" ? "408 Request Timeout" : "400 Bad Request";
  const headers = Object.entries({ ...HEADERS, connection: "close", "content-length": "0" });
  socket.end(`HTTP/1.1 ${status}\r\n${headers.map(([name, text]) => `${name}: ${text}\r\n`).join("")}\r\n`);
  return status;
}
