import { describe, expect, test } from "vitest";
import { picturesShown } from "../../core/circuit/pictures.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { SMALL } from "../edit/given.ts";

const PHOTO = { sha256: "ab".repeat(32), mime: "image/webp", widthPx: 1_600, heightPx: 1_200 } as const;

/** A circuit whose first place has this photo, as it is read from a file: its text again, or the code and path of the refusal. */
function read(photo: unknown): string {
  const access = SMALL.access.map((group) => ({ ...group, photo }));
  const circuit = readCircuit(JSON.stringify({ ...JSON.parse(formatCircuit(SMALL)), access }));
  if (!circuit.ok) return `${circuit.refusal.code} ${circuit.refusal.about.path}`;
  const text = formatCircuit(circuit.value);
  expect(JSON.parse(text).access[0].photo).toEqual(photo);
  const again = readCircuit(text);
  expect(again.ok && formatCircuit(again.value)).toBe(text);
  return "read";
}

describe("the photo of a place in a circuit file", () => {
  test.each([
    ["as the program keeps it", PHOTO, "read"],
    ["of one pixel", { ...PHOTO, widthPx: 1, heightPx: 1 }, "read"],
    ["not brought down to size", { ...PHOTO, widthPx: 1_601 }, "file-limit access[0].photo.widthPx"],
    ["of no size", { ...PHOTO, heightPx: 0 }, "file-limit access[0].photo.heightPx"],
    ["whose hash is a path", { ...PHOTO, sha256: "../../etc" }, "file-name access[0].photo.sha256"],
    ["of another kind", { ...PHOTO, mime: "image/svg+xml" }, "file-choice access[0].photo.mime"],
    ["with more said of it", { ...PHOTO, title: "x" }, "file-field-unknown access[0].photo"],
  ])("%s", (_, photo, answer) => expect(read(photo)).toBe(answer));

  test("is one of the pictures that the circuit shows", () => {
    const [first, ...others] = SMALL.access;
    const circuit = { ...SMALL, access: [{ ...first!, photo: PHOTO }, ...others] };
    expect(picturesShown(SMALL)).toEqual([]);
    expect(picturesShown(circuit)).toEqual([{ image: PHOTO, title: first!.label }]);
  });
});
