import { readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCircuitFile, writeFileWhole } from "../../electron/files.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { code, ownFolder, value } from "./library.ts";
import { sample, sampleText } from "./sample.ts";

describe("a circuit file", () => {
  it("is read, and what is none is refused", async () => {
    const folder = ownFolder();
    const file = join(folder, "a.circuit.json");
    writeFileSync(file, sampleText());
    expect(value(await readCircuitFile(file))).toEqual(sample());
    expect(code(await readCircuitFile(folder))).toBe("file-folder");
    expect(code(await readCircuitFile(join(folder, "b.circuit.json")))).toBe("file-missing");
    writeFileSync(file, Buffer.alloc(LIMITS.bytes + 1, " "));
    expect(code(await readCircuitFile(file))).toBe("file-too-large");
  });

  it.skipIf(process.platform === "win32")("that tells no size is read to the limit and no further", async () => {
    const endless = join(ownFolder(), "endless.circuit.json");
    symlinkSync("/dev/zero", endless);
    expect(code(await readCircuitFile(endless))).toBe("file-too-large");
  });
});

describe("a file that is written", () => {
  it("takes the place of the one before, and leaves nothing beside it", async () => {
    const folder = ownFolder();
    const file = join(folder, "a.pdf");
    for (const content of ["first", "second"]) value(await writeFileWhole(file, content));
    expect({ content: readFileSync(file, "utf8"), names: readdirSync(folder) }).toEqual({
      content: "second",
      names: ["a.pdf"],
    });
    expect(code(await writeFileWhole(join(folder, "no", "a.pdf"), ""))).toBe("file-no-folder");
    expect(code(await writeFileWhole(folder, ""))).toBe("file-unwritable");
    expect(readdirSync(folder)).toEqual(["a.pdf"]);
  });
});
