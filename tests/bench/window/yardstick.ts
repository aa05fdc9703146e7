import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname } from "node:path";
import type { Page } from "@playwright/test";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { terminalSpots } from "../../../core/circuit/placeSymbol.ts";
import { onceScript } from "./opening.ts";

const FILES: Readonly<Record<string, URL>> = {
  "/empty.html": new URL("page/empty.html", import.meta.url),
  "/bare.html": new URL("page/bare.html", import.meta.url),
  "/once.html": new URL("page/once.html", import.meta.url),
  "/bare.js": new URL("page/bare.js", import.meta.url),
  "/konva.js": new URL("../../../node_modules/konva/konva.min.js", import.meta.url),
};
const TYPES: Readonly<Record<string, string>> = { ".html": "text/html", ".js": "text/javascript" };

/** The plain pages that ours are measured against, served by a server that does nothing else. */
export interface Yardsticks {
  readonly empty: string;
  readonly bare: string;
  readonly once: string;
  stop(): void;
}

/** Serves them. */
export async function serveYardsticks(): Promise<Yardsticks> {
  const script = await onceScript();
  const server = createServer(({ url = "" }, response) => {
    const content = url === "/once.js" ? script : FILES[url] && readFileSync(FILES[url]);
    if (!content) response.writeHead(404).end();
    else response.writeHead(200, { "content-type": TYPES[extname(url)] }).end(content);
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  const at = (name: string): string => `http://127.0.0.1:${port}/${name}`;
  return { empty: at("empty.html"), bare: at("bare.html"), once: at("once.html"), stop: () => server.close() };
}

/** Room at the edges of the bare drawing, pixels. */
const MARGIN = 24;

/** Shows all wires of a circuit's first page as plain lines of two bends, as large as they fit into a canvas of this size. */
export async function showBare(page: Page, circuit: Circuit, width: number, height: number): Promise<void> {
  const spots = terminalSpots(circuit, circuit.pages[0]!.id);
  const wires = circuit.wires.map(({ from, to }) => {
    const [a, b] = [spots.get(from)!, spots.get(to)!];
    const middle = (a.y + b.y) / 2;
    return [a.x, a.y, a.x, middle, b.x, middle, b.x, b.y];
  });
  const all = wires.flat();
  const [right, bottom] = [all.filter((_, i) => i % 2 === 0), all.filter((_, i) => i % 2 === 1)].map((each) =>
    Math.max(...each),
  );
  const scale = Math.min((width - MARGIN) / right!, (height - MARGIN) / bottom!);
  await page.evaluate(`showWires(${JSON.stringify({ width, height, scale, wires })})`);
}
