import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { takeHomePage } from "../../electron/print/takeHome.ts";
import { sample } from "../samples/onTheBench.ts";

const VENTS = sample("1-roof-vents");
const PARTS = { script: "open(document)", style: "body { color: red }" };
const HOSTILE = '</script><script>alert(1)</script><!--\u2028\u202E"';

/** What a browser takes for the text of the page's data. */
function dataIn(html: string): string {
  return /<script type="application\/json" id="circuit">(.*?)<\/script>/s.exec(html)![1]!;
}

describe("a take-home page", () => {
  test("carries the circuit as it is, whatever words are in it", () => {
    const circuit = { ...VENTS, title: HOSTILE, parts: VENTS.parts.map((part) => ({ ...part, label: HOSTILE })) };
    const html = takeHomePage(circuit, PARTS);
    const data = dataIn(html);
    expect(JSON.parse(data)).toEqual({ ...circuit, pages: circuit.pages, access: circuit.access });
    expect(data).not.toMatch(/[<\u2028]/);
    expect(html.match(/<script/g)).toHaveLength(2);
  });

  test("lets nothing run but its own script and style, by their hashes", () => {
    const html = takeHomePage(VENTS, PARTS);
    const hash = (text: string) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
    expect(html).toContain(`script-src ${hash(PARTS.script)}; style-src ${hash(PARTS.style)};`);
    expect(html).toContain("default-src 'none'");
    expect(html).toContain(`<script>${PARTS.script}</script>`);
    expect(html).not.toMatch(/(?:src|href)=/);
  });

  test("keeps a title that turns the writing about to itself", () => {
    expect(takeHomePage({ ...VENTS, title: "\u202egnitt\u2069up" }, PARTS)).toContain(
      "<title>\u2068\u202egnittup\u2069</title>",
    );
  });

  test("leaves pictures at home", () => {
    const image = { sha256: "0".repeat(64), mime: "image/png", widthPx: 1, heightPx: 1 } as const;
    const corners = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    const circuit = {
      ...VENTS,
      pages: VENTS.pages.map((page) => ({ ...page, underlays: [{ id: "u", title: "", image, corners }] })),
      access: VENTS.access.map((group) => ({ ...group, photo: image })),
    };
    expect(takeHomePage(circuit, PARTS)).not.toContain(image.sha256);
  });
});
