import { readdirSync, readFileSync } from "node:fs";
import { unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import { unpackCircuit } from "../../electron/pack/pack.ts";
import { hashOfBytes } from "../../electron/store/pictureFile.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { readExercise } from "../../schemas/exercise.ts";
import { readFragment } from "../../schemas/fragment.ts";
import { readHandin } from "../../schemas/handin.ts";
import { readJob } from "../../schemas/job.ts";
import { openOneOf } from "../../schemas/marked.ts";
import { got } from "../edit/given.ts";

/*
 * Files as each form of them was given out, `FORM.FORMAT`. They never change: a program that comes later opens them all. A format
 * that gets another form gets another file here.
 */
const FOLDER = new URL("forms/", import.meta.url);

type Read = (bytes: Uint8Array) => Outcome<unknown> | Promise<Outcome<unknown>>;

/** Every format of file that leaves the program, by its ending, and what reads it. */
const FORMATS: Readonly<Record<string, Read>> = {
  "circuit.json": readCircuit,
  wirefathom: unpackCircuit,
  "job.json": readJob,
  "exercise.json": readExercise,
  "handin.json": readHandin,
  "fragment.json": (bytes) => readFragment(text(bytes)),
};

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(name, FOLDER)));
const formatOf = (name: string): string => name.slice(name.indexOf(".") + 1);

/** The same file as a program that comes later would write it; what is in a container is of a later form in it. */
function later(name: string): Uint8Array<ArrayBuffer> {
  if (formatOf(name) !== "wirefathom") return laterText(bytesOf(name));
  const files = unzipSync(bytesOf(name));
  files["circuit.json"] = laterText(files["circuit.json"]!);
  const sums = Object.entries(files).filter(([each]) => each !== "checksums.json");
  const hashes = Object.fromEntries(sums.map(([each, bytes]) => [each, hashOfBytes(bytes)]));
  return new Uint8Array(zipSync({ ...files, "checksums.json": new TextEncoder().encode(JSON.stringify(hashes)) }));
}

function laterText(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const file = JSON.parse(text(bytes));
  return new TextEncoder().encode(JSON.stringify({ ...file, version: file.version + 1, whatComesLater: {} }));
}

const NAMES = readdirSync(FOLDER).toSorted();

describe("files of every form that was given out", () => {
  test("are there for every format", () => {
    expect([...new Set(NAMES.map(formatOf))].toSorted()).toEqual(Object.keys(FORMATS).toSorted());
  });

  test.each(NAMES)("%s opens", async (name) => {
    const read = await FORMATS[formatOf(name)]!(bytesOf(name));
    expect(read.ok ? "opens" : read.refusal).toBe("opens");
  });

  test.each(NAMES)("%s of a form that comes later is refused with a sentence of its own", async (name) => {
    const read = await FORMATS[formatOf(name)]!(later(name));
    expect(read).toMatchObject({ ok: false, refusal: { code: "file-newer" } });
    if (!read.ok) expect(sentence(read.refusal)).toMatch(/newer/i);
  });

  test("the seal of an exercise opens with the passphrase that it was given out with", async () => {
    const opened = await openOneOf(got(readExercise(bytesOf("1.exercise.json"))), "green pear 7");
    expect(got(opened).hidden.fault).toBe("W4:open");
  });
});
