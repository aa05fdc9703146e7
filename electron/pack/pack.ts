import { zipSync } from "fflate";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit, Picture } from "../../core/circuit/circuit.ts";
import { picturesShown } from "../../core/circuit/pictures.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { hashOfBytes, type PictureFile, pictureOf } from "../store/pictureFile.ts";
import { type Entry, entriesOf, isArchive, shown, unpackedEntry } from "./entries.ts";

/** A circuit with the pictures that it shows. */
export interface Packed {
  readonly circuit: Circuit;
  readonly pictures: readonly PictureFile[];
}

const CIRCUIT = "circuit.json";
const SUMS = "checksums.json";
const FOLDER = "images/";
const ENDINGS = { "image/png": "png", "image/jpeg": "jpg", "image/webp": "webp" } as const;
const PICTURE_NAME = /^images\/([0-9a-f]{64})\.(?:png|jpg|webp)$/;
/** Every printed page under every page could have a picture of its own; nobody packs that many. */
const MOST_ENTRIES = 1_000;
const SUMS_BYTES = 1_000_000;
/** The first day that a ZIP archive can tell, so that the same circuit always gives the same bytes. */
const TIME = new Date(1980, 0, 1);

/**
 * A circuit and its pictures as one file, a ZIP archive: `circuit.json`, `images/HASH.ENDING`, and `checksums.json` with the
 * SHA-256 of each. Refuses `picture-unknown` where a picture that it shows is not given, and `pack-large`.
 */
export function packCircuit(circuit: Circuit, pictures: readonly PictureFile[]): Outcome<Uint8Array> {
  const given = new Map(pictures.map((file) => [file.picture.sha256, file]));
  const files: Record<string, Uint8Array> = { [CIRCUIT]: new TextEncoder().encode(formatCircuit(circuit)) };
  for (const { image } of picturesShown(circuit)) {
    const file = given.get(image.sha256);
    if (!file) return refuse("picture-unknown");
    files[nameOf(file.picture)] = file.bytes;
  }
  const sums = Object.fromEntries(Object.entries(files).map(([name, bytes]) => [name, hashOfBytes(bytes)]));
  files[SUMS] = new TextEncoder().encode(`${JSON.stringify(sums, null, 2)}\n`);
  const size = Object.values(files).reduce((sum, bytes) => sum + bytes.length, 0);
  if (size > LIMITS.packBytes) return refuse("pack-large", { most: LIMITS.packBytes / 1e6 });
  // Pictures are packed already.
  const entries = Object.entries(files).map(
    ([name, bytes]) => [name, [bytes, { level: name.startsWith(FOLDER) ? 0 : 6 }]] as const,
  );
  return ok(zipSync(Object.fromEntries(entries) as Parameters<typeof zipSync>[0], { mtime: TIME }));
}

function nameOf({ sha256, mime }: Picture): string {
  return `${FOLDER}${sha256}.${ENDINGS[mime]}`;
}

/**
 * Reads a packed circuit that anybody may have made. Names lead nowhere: they are compared with those that belong there and
 * never used as paths. Refuses a `pack-...` for what is wrong with the archive, what `readCircuit` refuses, and pictures
 * that are none or not those that the circuit describes; nothing is half read.
 */
export function unpackCircuit(bytes: Uint8Array): Outcome<Packed> {
  if (bytes.length === 0) return refuse("pack-empty");
  if (bytes.length > LIMITS.packBytes) return refuse("pack-large", { most: LIMITS.packBytes / 1e6 });
  if (!isArchive(bytes)) return refuse("pack-none");
  const entries = entriesOf(bytes, MOST_ENTRIES);
  if (!entries.ok) return entries;
  const files = unpackedFiles(
    bytes,
    entries.value.filter(({ name }) => name !== FOLDER),
  );
  if (!files.ok) return files;
  const sums = sumsRefusal(files.value);
  if (!sums.ok) return sums;
  const circuit = readCircuit(files.value.get(CIRCUIT)!);
  return circuit.ok ? withPictures(circuit.value, files.value) : circuit;
}

type Files = ReadonlyMap<string, Uint8Array>;

function mostBytes(name: string): number {
  if (name === CIRCUIT) return LIMITS.bytes;
  return name === SUMS ? SUMS_BYTES : LIMITS.pictureBytes;
}

function unpackedFiles(bytes: Uint8Array, entries: readonly Entry[]): Outcome<Files> {
  const stranger = entries.find(({ name }) => name !== CIRCUIT && name !== SUMS && !PICTURE_NAME.test(name));
  if (stranger) return refuse("pack-entry", { name: shown(stranger.name) });
  if (entries.reduce((sum, entry) => sum + entry.bytes, 0) > LIMITS.packBytes) {
    return refuse("pack-large", { most: LIMITS.packBytes / 1e6 });
  }
  const files = new Map<string, Uint8Array>();
  for (const entry of entries) {
    const file = unpackedEntry(bytes, entry, mostBytes(entry.name));
    if (!file.ok) return file;
    files.set(entry.name, file.value);
  }
  return ok(files);
}

/** Every file but the list itself stands in the list with its checksum, and nothing else does. */
function sumsRefusal(files: Files): Outcome<null> {
  for (const name of [CIRCUIT, SUMS]) if (!files.has(name)) return refuse("pack-missing", { name });
  let sums: unknown;
  try {
    sums = JSON.parse(new TextDecoder().decode(files.get(SUMS)));
  } catch {
    return refuse("pack-damaged");
  }
  const listed = new Map(Object.entries(Object(sums)));
  for (const [name, bytes] of files) {
    if (name !== SUMS && listed.get(name) !== hashOfBytes(bytes)) return refuse("pack-sum", { name });
  }
  const lost = [...listed.keys()].find((name) => !files.has(name));
  return lost === undefined ? ok(null) : refuse("pack-missing", { name: shown(lost) });
}

function withPictures(circuit: Circuit, files: Files): Outcome<Packed> {
  const pictures = new Map<string, PictureFile>();
  for (const { image, title } of picturesShown(circuit)) {
    const name = nameOf(image);
    const bytes = files.get(name);
    if (!bytes) return refuse("pack-missing", { name });
    const file = pictureOf(bytes);
    if (!file.ok) return file;
    const { sha256, mime, widthPx, heightPx } = file.value.picture;
    const isSame =
      sha256 === image.sha256 && mime === image.mime && widthPx === image.widthPx && heightPx === image.heightPx;
    if (!isSame) return refuse("pack-picture", { title });
    pictures.set(name, file.value);
  }
  const spare = [...files.keys()].find((name) => name.startsWith(FOLDER) && !pictures.has(name));
  return spare === undefined
    ? ok({ circuit, pictures: [...pictures.values()] })
    : refuse("pack-spare", { name: spare });
}
