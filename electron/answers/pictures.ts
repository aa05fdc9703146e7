import { type Outcome, ok } from "../../core/base/outcome.ts";
import { packCircuit, unpackCircuit } from "../pack/pack.ts";
import type { Store } from "../store/open.ts";
import { keepPicture, keptPicture, type PictureFile, pictureOf, picturesIn } from "../store/pictures.ts";
import { bringPacked } from "./bring.ts";
import { withStore } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the pictures of printed pages answer, and circuits that travel with them. */
export const PICTURE_ANSWERS: AnswersOf<"pictures.put" | "pictures.get" | "circuits.pack" | "circuits.unpack"> = {
  "pictures.put": async ({ bytes }, host) => {
    const file = pictureOf(Buffer.from(bytes, "base64"));
    if (!file.ok) return file;
    return withStore(host, (store) => {
      keepPicture(store, file.value, host.now());
      return ok(file.value.picture);
    });
  },

  "pictures.get": ({ sha256 }, host) =>
    withStore(host, (store) => {
      const file = keptPicture(store, sha256);
      return file.ok ? ok({ mime: file.value.picture.mime, bytes: base64Of(file.value.bytes) }) : file;
    }),

  "circuits.pack": ({ circuit }, host) =>
    withStore(host, (store) => {
      const pictures = all(store, picturesIn(circuit));
      if (!pictures.ok) return pictures;
      const packed = packCircuit(circuit, pictures.value);
      return packed.ok ? ok({ bytes: base64Of(packed.value) }) : packed;
    }),

  "circuits.unpack": async ({ bytes }, host) => {
    const packed = unpackCircuit(Buffer.from(bytes, "base64"));
    return packed.ok ? withStore(host, (store) => bringPacked(store, packed.value, host.now())) : packed;
  },
};

function all(store: Store, hashes: readonly string[]): Outcome<readonly PictureFile[]> {
  const files: PictureFile[] = [];
  for (const sha256 of hashes) {
    const file = keptPicture(store, sha256);
    if (!file.ok) return file;
    files.push(file.value);
  }
  return ok(files);
}

function base64Of(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("base64");
}
