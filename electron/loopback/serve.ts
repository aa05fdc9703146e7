import type { IncomingMessage, ServerResponse } from "node:http";
import type { Socket } from "node:net";
import { CALL_LIMITS } from "../../schemas/calls/call.ts";
import { answerText } from "../answers/door.ts";
import type { Host } from "../answers/host.ts";
import { pageFile } from "../pages.ts";
import { bodyOf } from "./body.ts";
import { isSame, type Keys } from "./keys.ts";
import { reply, replyJson, turnAway } from "./reply.ts";

/** What the server stands on. */
export interface Serving {
  readonly host: Host;
  /** Folder of the built page. */
  readonly pages: string;
  readonly port: number;
  readonly keys: Keys;
  /** Secret that a second start of the same person shows. */
  readonly key: string;
  /** Most bytes of a call. */
  readonly mostBytes?: number;
  /** Told which connection turned out to be the person's own. */
  letIn(socket: Socket): void;
}

const AGAIN_BYTES = 10_000;
const CALL_PATH = "/call/";

/** Answers one request: the page's files, its calls, and a second start; all else is turned away. */
export async function serve(serving: Serving, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const here = `127.0.0.1:${serving.port}`;
  // A page elsewhere can point a name of its own at this address; only the plain address is answered.
  if (request.headers.host !== here || (request.headersDistinct.host?.length ?? 0) > 1) {
    return turnAway(response, 421, "This is not the address of Wirefathom.");
  }
  // Two slashes first would name another host, whose origin would then pass for this one.
  const address = /^\/(?!\/)/.test(request.url ?? "") ? URL.parse(request.url!, `http://${here}`) : null;
  if (address?.host !== here) return turnAway(response, 400, "This is no address.");
  if (isFromElsewhere(request, address.origin)) return turnAway(response, 403, "This page may not ask.");
  if (serving.keys.isKnown(request.headers.cookie)) serving.letIn(request.socket);
  if (request.method === "POST") return await post(serving, address, request, response);
  if (request.method === "GET" || request.method === "HEAD") return await get(serving, address, request, response);
  return turnAway(response, 405, "This cannot be done here.");
}

/** True where a browser says that another page asks: one of another site, or of another port of this machine. */
function isFromElsewhere({ headers, headersDistinct }: IncomingMessage, own: string): boolean {
  const site = headers["sec-fetch-site"];
  if (site !== undefined && site !== "same-origin" && site !== "none") return true;
  return headers.origin !== undefined && (headers.origin !== own || headersDistinct.origin?.length !== 1);
}

async function get(
  { keys, pages }: Serving,
  address: URL,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const isKnown = keys.isKnown(request.headers.cookie);
  const token = address.pathname === "/" ? address.searchParams.get("t") : null;
  if (token !== null) {
    const cookie = isKnown || request.method !== "GET" ? null : keys.cookieFor(token);
    if (cookie) return reply(response, 303, "", { location: "/", "set-cookie": cookie });
    if (isKnown) return reply(response, 303, "", { location: "/" });
  }
  if (!isKnown) {
    return turnAway(response, 403, "This address works once, in one browser. Start Wirefathom again for a new one.");
  }
  const file = await pageFile(pages, address.pathname);
  if (!file) return turnAway(response, 404, "There is no such page.");
  return reply(response, 200, file.bytes, { "content-type": file.type });
}

async function post(serving: Serving, address: URL, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const type = request.headers["content-type"]?.split(";")[0]?.trim().toLowerCase();
  if (type !== "application/json") return turnAway(response, 415, "Only JSON is taken.");
  if (address.pathname === "/again") return await again(serving, address, request, response);
  if (!address.pathname.startsWith(CALL_PATH)) return turnAway(response, 404, "There is no such call.");
  if (request.headers.origin !== address.origin) return turnAway(response, 403, "This page may not ask.");
  if (!serving.keys.isKnown(request.headers.cookie)) return turnAway(response, 403, "This page may not ask.");
  const body = await bodyOf(request, serving.mostBytes ?? CALL_LIMITS.text);
  if (body === null) return turnAway(response, 413, "This is more than can be taken at once.");
  const gone = new AbortController();
  response.once("close", () => gone.abort());
  const name = address.pathname.slice(CALL_PATH.length);
  replyJson(response, 200, await answerText(serving.host, name, body, gone.signal));
}

/** A second start of the same person: it shows the secret from the lock file and gets an address of its own. */
async function again(
  { host, keys, key }: Serving,
  address: URL,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const body = await bodyOf(request, AGAIN_BYTES);
  const sent = parsed(body ?? "");
  if (!isSame(String(sent.key), key)) return turnAway(response, 403, "This start may not ask.");
  if (typeof sent.file === "string") host.requests.setStartFile(sent.file);
  replyJson(response, 200, JSON.stringify({ address: `${address.origin}/?t=${keys.newToken()}` }));
}

function parsed(text: string): { readonly key?: unknown; readonly file?: unknown } {
  try {
    return Object(JSON.parse(text));
  } catch {
    return {};
  }
}
