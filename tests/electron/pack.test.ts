import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { readCircuitFile } from "../../electron/files.ts";
import { packCircuit, unpackCircuit } from "../../electron/pack/pack.ts";
import { type PictureFile, pictureOf } from "../../electron/store/pictureFile.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { ask, code, got, hostOn, ownFolder, value } from "./library.ts";
import { png } from "./pictureFiles.ts";
import { sample } from "./sample.ts";
import { showing } from "./showing.ts";

const ONE = value(pictureOf(png(30, 20)));
const OTHER = value(pictureOf(png(40, 25, 90)));
const CIRCUIT = showing(sample(), ONE.picture, OTHER.picture);
const TEXT = formatCircuit(CIRCUIT);
const hash = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const pictureName = ({ picture }: PictureFile): string => `images/${picture.sha256}.png`;

/** Files as they belong into a packed circuit, after a change. */
function files(change: (files: Record<string, Uint8Array>) => void = () => {}): Record<string, Uint8Array> {
  const all = { "circuit.json": strToU8(TEXT), [pictureName(ONE)]: ONE.bytes, [pictureName(OTHER)]: OTHER.bytes };
  change(all);
  return all;
}

/** An archive of files with right checksums, which may be changed afterwards. */
function archive(
  change: (files: Record<string, Uint8Array>) => void = () => {},
  afterwards: (files: Zippable) => void = () => {},
): Uint8Array {
  const all = files(change);
  const sums = Object.fromEntries(Object.entries(all).map(([name, bytes]) => [name, hash(bytes)]));
  const zippable: Zippable = { ...all, "checksums.json": strToU8(JSON.stringify(sums)) };
  afterwards(zippable);
  return zipSync(zippable);
}

/** Changes a field of an entry's head in the directory of an archive; offsets as in the application note, 4.3.12. */
function patched(
  zip: Uint8Array,
  name: string,
  offset: number,
  write: (view: DataView, at: number) => void,
): Uint8Array {
  const copy = Uint8Array.from(zip);
  const view = new DataView(copy.buffer);
  for (let at = 0; at + 46 < copy.length; at++) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const length = view.getUint16(at + 28, true);
    if (new TextDecoder().decode(copy.subarray(at + 46, at + 46 + length)) === name) write(view, at + offset);
  }
  return copy;
}

describe("a packed circuit", () => {
  it("comes back as it went, and the same circuit gives the same bytes", () => {
    const packed = value(packCircuit(CIRCUIT, [ONE, OTHER]));
    const back = value(unpackCircuit(packed));
    expect(formatCircuit(back.circuit)).toBe(TEXT);
    expect(back.pictures.map(({ picture }) => picture)).toEqual([ONE.picture, OTHER.picture]);
    expect(back.pictures.map(({ bytes }) => hash(bytes))).toEqual([ONE, OTHER].map(({ bytes }) => hash(bytes)));
    expect(value(packCircuit(CIRCUIT, [OTHER, ONE]))).toEqual(packed);
  });

  it("brings the photos of places along", () => {
    const [first, ...others] = sample().access;
    const circuit = { ...CIRCUIT, access: [{ ...first!, photo: OTHER.picture }, ...others] };
    const shown = showing(circuit, ONE.picture);
    expect(code(packCircuit(shown, [ONE]))).toBe("picture-unknown");
    const back = value(unpackCircuit(value(packCircuit(shown, [ONE, OTHER]))));
    expect(formatCircuit(back.circuit)).toBe(formatCircuit(shown));
    expect(back.pictures.map(({ picture }) => picture)).toEqual([ONE.picture, OTHER.picture]);
  });

  it("is an ordinary archive: another reader finds its files, and a packing by another writer is taken", () => {
    const packed = value(packCircuit(CIRCUIT, [ONE, OTHER]));
    expect(Object.keys(unzipSync(packed)).toSorted()).toEqual([...Object.keys(files()), "checksums.json"].toSorted());
    expect(unpackCircuit(archive()).ok).toBe(true);
    expect(unpackCircuit(archive(undefined, (zip) => Object.assign(zip, { "images/": new Uint8Array(0) }))).ok).toBe(
      true,
    );
  });

  it("is not packed without all of its pictures", () =>
    expect(code(packCircuit(CIRCUIT, [ONE]))).toBe("picture-unknown"));
});

describe("a packed file that is not right is refused with one sentence", () => {
  const bomb = zipSync({ "circuit.json": new Uint8Array(15_000_000), "checksums.json": strToU8("{}") }, { level: 9 });
  const lying = patched(bomb, "circuit.json", 24, (view, at) => view.setUint32(at, 40_000, true));
  const cases: readonly (readonly [string, Uint8Array, string])[] = [
    ["nothing", new Uint8Array(0), "pack-empty"],
    ["a plain circuit", strToU8(TEXT), "pack-none"],
    ["an archive with nothing in it", zipSync({}), "pack-missing"],
    ["cut off", archive().subarray(0, 900), "pack-damaged"],
    ["without its directory", archive().subarray(0, -30), "pack-damaged"],
    ["a way out of the folder", archive((all) => Object.assign(all, { "../../evil.json": ONE.bytes })), "pack-entry"],
    ["a way to the root", archive((all) => Object.assign(all, { "/etc/cron.d/a": ONE.bytes })), "pack-entry"],
    [
      "a way out by another system",
      archive((all) => Object.assign(all, { "images\\..\\a.png": ONE.bytes })),
      "pack-entry",
    ],
    ["a file besides", archive((all) => Object.assign(all, { "notes.txt": strToU8("hi") })), "pack-entry"],
    ["no circuit", archive((all) => delete all["circuit.json"]), "pack-missing"],
    ["no checksums", archive(undefined, (zip) => delete zip["checksums.json"]), "pack-missing"],
    ["a picture that is missing", archive((all) => delete all[pictureName(ONE)]), "pack-missing"],
    ["a picture that is only listed", archive(undefined, (zip) => delete zip[pictureName(ONE)]), "pack-missing"],
    [
      "a circuit that was changed",
      archive(undefined, (zip) => Object.assign(zip, { "circuit.json": strToU8(`${TEXT} `) })),
      "pack-sum",
    ],
    [
      "a file that is not listed",
      archive(undefined, (zip) => Object.assign(zip, { [`images/${"0".repeat(64)}.png`]: ONE.bytes })),
      "pack-sum",
    ],
    [
      "checksums that are none",
      archive(undefined, (zip) => Object.assign(zip, { "checksums.json": strToU8("[") })),
      "pack-damaged",
    ],
    [
      "a picture under the name of another",
      archive((all) => Object.assign(all, { [pictureName(ONE)]: OTHER.bytes })),
      "pack-picture",
    ],
    [
      "a picture that is a page of a site",
      archive((all) => Object.assign(all, { [pictureName(ONE)]: strToU8("<html>") })),
      "picture-kind",
    ],
    [
      "a picture that no page shows",
      archive((all) => Object.assign(all, { [`images/${"0".repeat(64)}.png`]: ONE.bytes })),
      "pack-spare",
    ],
    ["a circuit that is none", archive((all) => Object.assign(all, { "circuit.json": strToU8("{}") })), "file-format"],
    [
      "locked with a password",
      patched(archive(), "circuit.json", 8, (view, at) => view.setUint16(at, 1, true)),
      "pack-encrypted",
    ],
    [
      "packed in an unknown way",
      patched(archive(), "circuit.json", 10, (view, at) => view.setUint16(at, 12, true)),
      "pack-method",
    ],
    [
      "a head elsewhere",
      patched(archive(), "circuit.json", 42, (view, at) => view.setUint32(at, 0xfffffff0, true)),
      "pack-damaged",
    ],
    ["more than it says, unpacked", lying, "pack-size"],
    [
      "more than may be, by what it says",
      patched(bomb, "circuit.json", 24, (view, at) => view.setUint32(at, 21_000_000, true)),
      "pack-size",
    ],
    [
      "far more than may be",
      patched(bomb, "circuit.json", 24, (view, at) => view.setUint32(at, 0xffffffff, true)),
      "pack-large",
    ],
    [
      "too many files",
      zipSync(Object.fromEntries(Array.from({ length: 1_001 }, (_, index) => [`${index}`, new Uint8Array(0)]))),
      "pack-many",
    ],
  ];

  it.each(cases)("%s", (_, bytes, expected) => {
    const outcome = unpackCircuit(bytes);
    expect(code(outcome)).toBe(expected);
    if (!outcome.ok) expect(sentence(outcome.refusal)).toMatch(/^[A-Z"].*[.]$/);
  });

  it("the same name twice", () => {
    const zip = patched(
      archive((all) => Object.assign(all, { "circuit.jsox": ONE.bytes })),
      "circuit.jsox",
      46,
      (view, at) => view.setUint8(at + 11, "n".charCodeAt(0)),
    );
    expect(code(unpackCircuit(zip))).toBe("pack-twice");
  });

  it("an archive over the limit is not looked into", () =>
    expect(code(unpackCircuit(new Uint8Array(LIMITS.packBytes + 1)))).toBe("pack-large"));

  it("whatever is damaged in it, never an exception", () => {
    const good = archive();
    const damaged = fc
      .tuple(fc.nat(good.length - 1), fc.uint8Array({ minLength: 1, maxLength: 8 }))
      .map(([at, put]) => {
        const copy = Uint8Array.from(good);
        copy.set(put.subarray(0, copy.length - at), at);
        return copy;
      });
    fc.assert(
      fc.property(damaged, (bytes) => {
        const outcome = unpackCircuit(bytes);
        if (outcome.ok) expect(formatCircuit(outcome.value.circuit)).toBe(TEXT);
      }),
      { seed: 3, numRuns: 600 },
    );
  });
});

describe("a packed circuit and the library", () => {
  const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");

  it("goes from one library to another with its pictures, and is known when it comes again", async () => {
    const [here, there] = [hostOn(ownFolder()), hostOn(ownFolder())];
    for (const { bytes } of [ONE, OTHER]) await got(here, "pictures.put", { bytes: base64(bytes) });
    const { bytes } = await got(here, "circuits.pack", { circuit: CIRCUIT });
    const opened = await got(there, "circuits.unpack", { bytes });
    expect(formatCircuit(opened.circuit)).toBe(TEXT);
    expect((await got(there, "pictures.get", { sha256: OTHER.picture.sha256 })).bytes).toBe(base64(OTHER.bytes));
    expect(await got(there, "circuits.unpack", { bytes })).toMatchObject({ known: true, id: opened.id });
  });

  it("leaves nothing behind where it is refused", async () => {
    const host = hostOn(ownFolder());
    const bad = archive((all) => Object.assign(all, { [pictureName(ONE)]: OTHER.bytes }));
    expect(code(await ask(host, "circuits.unpack", { bytes: base64(bad) }))).toBe("pack-picture");
    const { connection } = value(await host.keeper.store());
    expect(connection.prepare("SELECT count(*) FROM pictures").pluck().get()).toBe(0);
    expect((await got(host, "circuits.list", {})).count).toBe(0);
  });

  it("cannot be packed while a picture is not in the library", async () =>
    expect(code(await ask(hostOn(ownFolder()), "circuits.pack", { circuit: CIRCUIT }))).toBe("picture-unknown"));

  it("is taken from the disk by start, dialog and command line, whatever its name", async () => {
    const folder = ownFolder();
    const file = join(folder, "vents.wirefathom");
    writeFileSync(file, archive());
    expect(value(await readCircuitFile(file)).title).toBe(CIRCUIT.title);
    const host = hostOn(join(folder, "library"));
    host.requests.setStartFile(file);
    const { open, notices } = await got(host, "start", {});
    expect(notices).toEqual([]);
    expect((await got(host, "circuits.open", { id: open! })).circuit).toEqual(CIRCUIT);
    expect((await got(host, "pictures.get", { sha256: ONE.picture.sha256 })).mime).toBe("image/png");
  });
});
