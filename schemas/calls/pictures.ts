import { z } from "zod";
import { PICTURE_TYPES } from "../../core/circuit/circuit.ts";
import { LIMITS } from "../limits.ts";
import { base64Length, type Call, circuit } from "./call.ts";
import { openedCircuit } from "./circuits.ts";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
/** Bytes in base64. */
const base64 = (mostBytes: number) => z.base64().max(base64Length(mostBytes));
const picture = z.strictObject({ sha256, mime: z.enum(PICTURE_TYPES), widthPx: z.int(), heightPx: z.int() });
const picked = base64(LIMITS.pictureBytes);
const packed = base64(LIMITS.packBytes);

/** Calls on the pictures of printed pages, and on circuits that travel with them. Bytes go over as base64. */
export const PICTURE_CALLS = {
  /**
   * Keeps a picture and says what it is, by its own head. Refuses `picture-...` for what is no PNG, JPEG or WebP, is damaged,
   * or is over the limits of size.
   */
  "pictures.put": { argument: z.strictObject({ bytes: picked }), answer: picture },
  /** A picture that was kept. Refuses `picture-unknown` and `picture-changed`. */
  "pictures.get": {
    argument: z.strictObject({ sha256 }),
    answer: z.strictObject({ mime: z.enum(PICTURE_TYPES), bytes: picked }),
  },
  /** A circuit and the pictures that it shows as one file. Refuses `picture-unknown`, `picture-changed` and `pack-large`. */
  "circuits.pack": { argument: z.strictObject({ circuit }), answer: z.strictObject({ bytes: packed }) },
  /** Takes such a file into the library and opens it. Refuses `pack-...` and what reading the circuit refuses. */
  "circuits.unpack": { argument: z.strictObject({ bytes: packed }), answer: openedCircuit },
} as const satisfies Readonly<Record<string, Call>>;
