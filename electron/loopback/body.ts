import type { IncomingMessage } from "node:http";

/** The body of a request as text, or null where it is larger than so many bytes or was not sent to its end. */
export async function bodyOf(request: IncomingMessage, mostBytes: number): Promise<string | null> {
  if (Number(request.headers["content-length"] ?? 0) > mostBytes) return null;
  const pieces: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const piece of request as AsyncIterable<Buffer>) {
      bytes += piece.length;
      if (bytes > mostBytes) return null;
      pieces.push(piece);
    }
  } catch {
    return null;
  }
  return Buffer.concat(pieces).toString("utf8");
}
