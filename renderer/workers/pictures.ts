import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Picture, pictureOf } from "./picture.ts";

/** A circuit on its way to be drawn. */
export interface PictureAsked {
  readonly number: number;
  readonly circuit: Circuit;
}

/** Its picture on the way back; null where it could not be drawn. */
export interface PictureAnswered {
  readonly number: number;
  readonly picture: Picture | null;
}

self.onmessage = ({ data }: MessageEvent<PictureAsked>) => {
  const answer: PictureAnswered = { number: data.number, picture: drawn(data.circuit) };
  self.postMessage(answer);
};

function drawn(circuit: Circuit): Picture | null {
  try {
    return pictureOf(circuit);
  } catch {
    // A tile without a picture is better than no library.
    return null;
  }
}
