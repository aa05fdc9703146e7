import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it, onTestFinished } from "vitest";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const GUARD = join(ROOT, "tests", "noNetwork.ts");
const HORN = join(ROOT, "samples", "4-horn.circuit.json");

/** A process of its own that ends as soon as it asks for the network. */
function guarded(...words: readonly string[]): { readonly status: number | null; readonly stderr: string } {
  return spawnSync(process.execPath, ["--require", GUARD, ...words], { encoding: "utf8", timeout: 120_000 });
}

describe("nothing leaves the machine", () => {
  it.each([
    'fetch("http://wirefathom.example/")',
    'require("node:net").connect(80, "192.0.2.1")',
    'require("node:net").connect({ host: "192.0.2.1", port: 80 })',
    'require("node:dns").lookup("wirefathom.example", () => {})',
    'require("node:dns").promises.resolve4("wirefathom.example")',
    'require("node:dgram").createSocket("udp4")',
    'new (require("node:worker_threads").Worker)(`fetch("https://wirefathom.example/")`, { eval: true })',
  ])("the guard stops %s", (text) => {
    const { status, stderr } = guarded("-e", text);
    expect(stderr).toContain("the network was asked for");
    expect([97, null]).toContain(status);
  });

  it("from the terminal: nothing asks for the network while a circuit is checked, probed, printed or handed on", () => {
    const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const main = join(ROOT, "electron", "terminal", "main.ts");
    for (const words of [
      ["check", HORN],
      ["order", HORN, "--complaint", "low-horn"],
      ["print", HORN, "--what", "sheet", "--out", join(folder, "sheet.pdf")],
      ["export", HORN, "--what", "wires", "--out", join(folder, "wires.csv")],
    ]) {
      const { status, stderr } = guarded(main, ...words);
      expect(stderr).not.toContain("network");
      expect([0, 1], stderr).toContain(status);
    }
  });
});
