import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ask, code, got, hostOn, ownFolder } from "./library.ts";
import { sample } from "./sample.ts";

describe("files to hand on", () => {
  it("are a page that works by itself, and a drawing with its font in it", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    const circuit = sample(undefined, "4-horn");
    expect(code(await ask(host, "export.takeHome", { circuit }))).toBe("take-home-missing");
    writeFileSync(join(folder, "page.js"), "start()");
    writeFileSync(join(folder, "page.css"), "body {}");
    const { html, name } = await got(host, "export.takeHome", { circuit });
    expect(html).toContain("<script>start()</script>");
    expect(name).toBe(`${circuit.title}.html`);
    const [page] = circuit.pages;
    const { svg } = await got(host, "export.svg", { circuit, page: page!.id, condition: "S1=pressed" });
    expect(svg).toContain("data:font/woff2;base64,");
    expect(code(await ask(host, "export.svg", { circuit, page: "p99" }))).toBe("page-unknown-print");
  });
});
