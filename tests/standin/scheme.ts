import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { stage } from "./stage.ts";

type Handler = (request: Request) => Response | Promise<Response>;

/** Pages of these names are this machine's own to Chromium, and as safe to it as a page over TLS. */
const ENDING = ".standin.localhost";
const handlers = new Map<string, Handler>();
const schemes = new Set<string>();
let port = 0;

/** Schemes of the program's own. */
export const protocol = {
  registerSchemesAsPrivileged: (given: readonly { readonly scheme: string }[]): void => {
    if (stage.isReady) throw new Error("registerSchemesAsPrivileged must be called before the program is ready");
    for (const { scheme } of given) schemes.add(scheme);
  },
  handle: (scheme: string, handler: Handler): void => {
    if (handlers.has(scheme)) throw new Error(`${scheme} is handled already`);
    handlers.set(scheme, handler);
  },
};

/** Starts the server that carries the schemes to Chromium. */
export async function carryScheme(): Promise<void> {
  const server = createServer((request, response) => {
    answered(request, response).catch((error: unknown) => response.destroy(error as Error));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  server.unref();
  port = (server.address() as AddressInfo).port;
}

/** The address under which Chromium finds what an address of a scheme of ours means. */
export function carried(address: string): string {
  const { protocol: scheme, host, pathname, search, hash } = new URL(address);
  const name = scheme.slice(0, -1);
  return schemes.has(name) ? `http://${name}--${host}${ENDING}:${port}${pathname}${search}${hash}` : address;
}

/** The other way: what an address that Chromium uses means to the program. */
export function meant(address: string): string {
  const url = URL.parse(address);
  if (!url?.hostname.endsWith(ENDING)) return address;
  const [name, host] = url.hostname.slice(0, -ENDING.length).split("--");
  return `${name}://${host}${url.pathname}${url.search}${url.hash}`;
}

async function answered({ headers, url, method = "GET" }: IncomingMessage, response: ServerResponse): Promise<void> {
  const address = meant(`http://${headers.host}${url}`);
  const handler = handlers.get(address.split(":")[0]!);
  if (!handler) {
    response.writeHead(404).end();
    return;
  }
  const reply = await handler(new Request(address, { method }));
  response.writeHead(reply.status, Object.fromEntries(reply.headers)).end(Buffer.from(await reply.arrayBuffer()));
}
