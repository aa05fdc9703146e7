import { type Outcome, ok } from "../../core/base/outcome.ts";
import { packCircuit, unpackCircuit } from "../pack/pack.ts";
import type { PictureShelf } from "../store/library.ts";
import { type PictureFile, pictureOf, picturesIn } from "../store/pictureFile.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the pictures of printed pages answer, and circuits that travel with them. */
export const PICTURE_ANSWERS: AnswersOf<"pictures.put" | "pictures.get" | "circuits.pack" | "circuits.unpack"> = {
  "pictures.put": async ({ bytes }, host) => {
    const file = pictureOf(Buffer.from(bytes, "base64"));
    return file.ok ? withLibrary(host, ({ pictures }) => pictures.keep(file.value, host.now())) : file;
  },

  "pictures.get": ({ sha256 }, host) =>
    withLibrary(host, async ({ pictures }) => {
      const file = await pictures.read(sha256);
      return file.ok ? ok({ mime: file.value.picture.mime, bytes: base64Of(file.value.bytes) }) : file;
    }),

  "circuits.pack": ({ circuit }, host) =>
    withLibrary(host, async ({ pictures }) => {
      const files = await all(pictures, picturesIn(circuit));
      if (!files.ok) return files;
      const packed = packCircuit(circuit, files.value);
      return packed.ok ? ok({ bytes: base64Of(packed.value) }) : packed;
    }),

  "circuits.unpack": async ({ bytes }, host) => {
    const packed = unpackCircuit(Buffer.from(bytes, "base64"));
    return packed.ok ? withLibrary(host, ({ circuits }) => circuits.bringIn(packed.value, host.now())) : packed;
  },
};

async function all(shelf: PictureShelf, hashes: readonly string[]): Promise<Outcome<readonly PictureFile[]>> {
  const files: PictureFile[] = [];
  for (const sha256 of hashes) {
    const file = await shelf.read(sha256);
    if (!file.ok) return file;
    files.push(file.value);
  }
  return ok(files);
}

function base64Of(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("base64");
}
