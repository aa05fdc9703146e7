import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { netListText, positionTableCsv, wireListCsv } from "../../core/paper/lists.ts";
import { entriesOf } from "../../electron/pack/entries.ts";
import { unpackCircuit } from "../../electron/pack/pack.ts";
import { pictureOf } from "../../electron/store/pictureFile.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { SCRIPTED, TURNED, withWords } from "../hostile.ts";
import { run } from "../terminal/run.ts";
import { ask, code, got, hostOn, ownFolder, value } from "./library.ts";
import { png } from "./pictureFiles.ts";
import { sampleText } from "./sample.ts";

const HORN = sampleText();

describe("an archive that would fill the memory", () => {
  const records = (zip: Uint8Array): { readonly view: DataView; readonly heads: readonly number[] } => {
    const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
    const heads = Array.from({ length: zip.length - 46 }, (_, at) => at).filter(
      (at) => view.getUint32(at, true) === 0x02014b50,
    );
    return { view, heads };
  };

  it("by a file of noughts, packed a thousand times smaller, is refused before it is unpacked", () => {
    const zip = zipSync({ "circuit.json": new Uint8Array(100_000_000) }, { level: 9 });
    expect(zip.length).toBeLessThan(200_000);
    const before = process.memoryUsage().rss;
    expect(["pack-size", "pack-large"]).toContain(code(unpackCircuit(zip)));
    expect(process.memoryUsage().rss - before).toBeLessThan(60_000_000);
  });

  it("by files that lie over one another, of which each is unpacked in turn, is refused as too large", () => {
    const names = Array.from({ length: 900 }, (_, at) => `images/${String(at).padStart(64, "0")}.png`);
    const zip = zipSync(
      Object.fromEntries([["circuit.json", strToU8(HORN)], ...names.map((name) => [name, new Uint8Array(8)])]),
    );
    const { view, heads } = records(zip);
    const large = zipSync({ "circuit.json": new Uint8Array(20_000_000) }, { level: 9 });
    // Every entry points at the first and says that it holds as much.
    for (const at of heads) {
      view.setUint32(at + 42, 0, true);
      view.setUint32(at + 24, 20_000_000, true);
    }
    expect(large.length).toBeLessThan(zip.length);
    expect(code(unpackCircuit(zip))).toBe("pack-large");
  });

  it("by an archive in an archive is refused, since nothing in it is looked into", () => {
    const inner = zipSync({ "circuit.json": strToU8(HORN) });
    expect(code(unpackCircuit(zipSync({ "inner.zip": inner })))).toBe("pack-entry");
    expect(code(unpackCircuit(zipSync({ "circuit.json": inner, "checksums.json": strToU8("{}") })))).toBe("pack-sum");
  });

  it("by a size that it does not have is refused at the first byte too many", () => {
    const zip = zipSync({ "circuit.json": new Uint8Array(15_000_000), "checksums.json": strToU8("{}") }, { level: 9 });
    const { view, heads } = records(zip);
    for (const at of heads) view.setUint32(at + 24, 1_000, true);
    expect(["pack-size", "pack-damaged"]).toContain(code(unpackCircuit(zip)));
  });

  it("by more names than there are is refused", () => {
    const zip = zipSync({ "circuit.json": strToU8(HORN) });
    const view = new DataView(zip.buffer, zip.byteOffset);
    view.setUint16(zip.length - 22 + 10, 65_535, true);
    expect(code(entriesOf(zip, 1_000))).toBe("pack-many");
  });
});

describe("a file that is two things at once", () => {
  it("is taken for what it is by its first bytes, or for nothing", () => {
    const picture = png(20, 10);
    const zip = Buffer.from(zipSync({ "circuit.json": strToU8(HORN) }));
    expect(code(unpackCircuit(Buffer.concat([picture, zip])))).toBe("pack-none");
    expect(value(pictureOf(Buffer.concat([picture, zip]))).picture.mime).toBe("image/png");
    expect(code(readCircuit(Buffer.concat([picture, Buffer.from(HORN)])))).toBe("file-not-text");
    expect(code(readCircuit(Buffer.from(`%PDF-1.7 ${HORN}`)))).toBe("file-not-text");
  });

  it.each([
    "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
    "\ufeff<?xml version='1.0'?><svg/>",
    "<html><script>1</script>",
  ])("and %s is no picture", async (text) => {
    expect(code(pictureOf(Buffer.from(text)))).toBe("picture-kind");
    const host = hostOn(ownFolder());
    expect(code(await ask(host, "pictures.put", { bytes: Buffer.from(text).toString("base64") }))).toBe("picture-kind");
  });
});

describe("words that would be a formula", () => {
  it.each(["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", '=HYPERLINK("http://a")', "\uff1d1+1"])(
    "%j: none in any CSV of a circuit",
    async (words) => {
      const { circuit, places } = withWords(HORN, words);
      expect(places).toBeGreaterThan(10);
      const folder = ownFolder();
      const file = join(folder, "a.circuit.json");
      writeFileSync(file, formatCircuit(circuit));
      for (const what of ["wires", "table"])
        expect((await run("export", file, "--what", what, "--out", join(folder, `${what}.csv`))).code).toBe(0);
      const texts = [wireListCsv(circuit), positionTableCsv([]), netListText(circuit).replaceAll(circuit.title, "")];
      for (const text of [
        ...texts,
        ...["wires", "table"].map((what) => readFileSync(join(folder, `${what}.csv`), "utf8")),
      ]) {
        expect(text).not.toMatch(/(?:^|[,;"\n\r])[=+@\t\r\uff1d](?!\d*\.?\d+(?:[,;\r]|$))\S/m);
      }
    },
  );
});

describe("words that turn what is written", () => {
  it("turn nothing in the terminal, and are found in the library", async () => {
    const { circuit } = withWords(HORN, TURNED);
    const folder = ownFolder();
    const file = join(folder, "a.circuit.json");
    writeFileSync(file, formatCircuit(circuit));
    const { out, complaint } = await run("check", file);
    for (const text of [out, complaint])
      for (const line of text.split("\n")) expect(line).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    const host = hostOn(join(folder, "library"));
    await got(host, "circuits.create", { circuit });
    const { rows } = await got(host, "circuits.list", { search: "evil" });
    expect(rows).toHaveLength(1);
  });
});

describe("words with markup in them", () => {
  it("are written out in every sheet, and nothing in one runs or is asked for", async () => {
    const { circuit, places } = withWords(HORN, SCRIPTED);
    expect(places).toBeGreaterThan(20);
    const folder = ownFolder();
    mkdirSync(join(folder, "out"));
    const file = join(folder, "a.circuit.json");
    writeFileSync(file, formatCircuit(circuit));
    for (const what of ["sheet", "checklist", "branches", "table", "straight", "budget"]) {
      for (const ending of what === "sheet" ? ["html", "svg"] : ["html"]) {
        const out = join(folder, "out", `${what}.${ending}`);
        const printed = await run("print", file, "--what", what, "--complaint", "low-horn", "--out", out);
        expect({ what, ...printed, out: "" }).toMatchObject({ code: 0 });
        const text = readFileSync(out, "utf8");
        expect(text).toContain("&lt;script&gt;");
        // Words between quotes are an attribute's, and end with it: a quote in them is written out too.
        expect(text.replace(/"[^"]*"/g, '""')).not.toMatch(/<(?:script|img|svg onload)|<[a-z][^>]*\son\w+=/i);
      }
    }
  });
});
