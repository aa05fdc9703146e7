import { createServer, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import { REFUSED_WORDS } from "../core/base/words/window.ts";
import type { Host } from "./answers/host.ts";
import { newGate } from "./loopback/gate.ts";
import { newKeys, secret } from "./loopback/keys.ts";
import { refusalsTo } from "./loopback/refusals.ts";
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
  /** Most connections that have not shown a cookie yet. */
  readonly strangers?: number;
  /** Told of each refused request in a short line, of which there are never many. */
  refused?(line: string): void;
}

const REQUEST_MS = 30_000;
const HEADERS_MS = 10_000;
const STRANGERS = 128;
/** All connections, those that were just hung up on too. */
const CONNECTIONS = 2_000;

/**
 * Serves the built page in a folder on 127.0.0.1, on a port that is free. Only a browser that came by a one-time address
 * is answered, and only pages from here may call. `fault` is told what goes wrong inside, `refused` who was turned away.
 */
export async function startLoopback(
  host: Host,
  pages: string,
  fault: (error: unknown) => void,
  limits: LoopbackLimits = {},
): Promise<Loopback> {
  const { mostBytes, requestMs = REQUEST_MS, strangers = STRANGERS, refused = () => {} } = limits;
  const gate = newGate(strangers);
  const refusals = refusalsTo(refused, host.now);
  const server = createServer({
    // Left to itself, Node would answer a request without a host, and without the headers of every response.
    requireHostHeader: false,
    requestTimeout: requestMs,
    headersTimeout: Math.min(HEADERS_MS, requestMs),
    connectionsCheckingInterval: Math.min(1_000, requestMs),
    maxHeaderSize: 16_384,
  });
  server.maxConnections = CONNECTIONS;
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, "127.0.0.1", resolve);
  });
  const { port } = server.address() as AddressInfo;
  const keys = newKeys(port);
  const serving: Serving = {
    host,
    pages,
    port,
    keys,
    key: secret(),
    letIn: gate.letIn,
    ...(mostBytes !== undefined && { mostBytes }),
  };
  server.on("connection", (socket) => {
    if (gate.arrived(socket)) refusals.note(REFUSED_WORDS.waited);
  });
  server.on("drop", () => refusals.note(REFUSED_WORDS.tooMany));
  server.on("clientError", (error, socket) => {
    const status = hangUp(error, socket);
    if (status !== null) refusals.note(status);
  });
  server.on("connect", (request, socket) => {
    refusals.note(405, whatIsAsked(request));
    socket.destroy();
  });
  server.on("checkExpectation", (request, response) => {
    refusals.note(417, whatIsAsked(request));
    turnAway(response, 417, "This cannot be expected here.");
  });
  server.on("request", (request, response) => {
    response.once("close", () => {
      if (response.statusCode >= 400) refusals.note(response.statusCode, whatIsAsked(request));
    });
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
        refusals.end();
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** What a request asks for, as far as it may be told: without what comes after a question mark, which may let somebody in. */
function whatIsAsked({ method, url = "" }: IncomingMessage): string {
  return `${method} ${url.split("?")[0]}`;
}
