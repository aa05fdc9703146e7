import { protocol } from "electron";
import { HEADERS } from "./headers.ts";
import { pageFile } from "./pages.ts";

const SCHEME = "app";
const HOST = "wirefathom";

/** Address of the page in the window. */
export const PAGE_ADDRESS = `${SCHEME}://${HOST}/`;

/** True where an address is one of the window's own page. */
export function isOwnAddress(address: string): boolean {
  const url = URL.parse(address);
  return url !== null && url.protocol === `${SCHEME}:` && url.host === HOST;
}

/** Makes the page's scheme a full origin. Once, and before the program is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Serves the built page in a folder to the window, with the headers of every host. */
export function servePages(folder: string): void {
  protocol.handle(SCHEME, (request) => pageResponse(folder, request));
}

async function pageResponse(folder: string, request: Request): Promise<Response> {
  const refusal = (status: number): Response => new Response(null, { status, headers: HEADERS });
  if (!isOwnAddress(request.url)) return refusal(403);
  if (request.method !== "GET" && request.method !== "HEAD") return refusal(405);
  const file = await pageFile(folder, new URL(request.url).pathname);
  if (!file) return refusal(404);
  return new Response(file.bytes, { headers: { ...HEADERS, "content-type": file.type } });
}
