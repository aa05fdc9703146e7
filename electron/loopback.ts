import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import type { Host } from "./answers/host.ts";
import { newKeys, secret } from "./loopback/keys.ts";
import { hangUp, turnAway } from "./loopback/reply.ts";
import { type Serving, serve } from "./loopback/serve.ts";

/** The page served to a browser on this machine. */
export interface Loopback {
  readonly port: number;
  /** Secret for a second start of the same person. */
  readonly key: string;
  /** A new address that lets one browser in, once. */
  newAddress(): string;
  close(): Promise<void>;
}

/** What a test sets otherwise. */
export interface LoopbackLimits {
  /** Most bytes of a call. */
  readonly mostBytes?: number;
  /** Longest that a request may take to arrive, in milliseconds. */
  readonly requestMs?: number;
  readonly connections?: number;
}

const REQUEST_MS = 30_000;
const HEADERS_MS = 10_000;
const CONNECTIONS = 64;

/**
 * Serves the built page in a folder on 127.0.0.1, on a port that is free. Only a browser that came by a one-time address
 * is answered, and only pages from here may call. `fault` is told what goes wrong inside.
 */
export async function startLoopback(
  host: Host,
  pages: string,
  fault: (error: unknown) => void,
  limits: LoopbackLimits = {},
): Promise<Loopback> {
  const { mostBytes, requestMs = REQUEST_MS, connections = CONNECTIONS } = limits;
  const server = createServer({
    // Left to itself, Node would answer a request without a host, and without the headers of every response.
    requireHostHeader: false,
    requestTimeout: requestMs,
    headersTimeout: Math.min(HEADERS_MS, requestMs),
    connectionsCheckingInterval: Math.min(1_000, requestMs),
    maxHeaderSize: 16_384,
  });
  server.maxConnections = connections;
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, "127.0.0.1", resolve);
  });
  const { port } = server.address() as AddressInfo;
  const keys = newKeys(port);
  const serving: Serving = { host, pages, port, keys, key: secret(), ...(mostBytes !== undefined && { mostBytes }) };
  server.on("clientError", hangUp);
  server.on("checkExpectation", (_request, response) => turnAway(response, 417, "This cannot be expected here."));
  server.on("request", (request, response) => {
    serve(serving, request, response).catch((error: unknown) => {
      fault(error);
      if (!response.headersSent) turnAway(response, 500, "Wirefathom met a fault of its own.");
      else response.destroy();
    });
  });
  return {
    port,
    key: serving.key,
    newAddress: () => `http://127.0.0.1:${port}/?t=${keys.newToken()}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
