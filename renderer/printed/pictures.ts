import type { Outcome } from "../../core/base/outcome.ts";
import type { Picture } from "../../core/circuit/circuit.ts";
import { base64Of, bytesOf } from "../host/base64.ts";
import type { Host } from "../host/host.ts";
import type { Mishaps } from "../report/mishaps.ts";
import { faultOf, isTrouble } from "../workers/trouble.ts";
import type { Lay } from "./lay.ts";
import type { LayAnswered, LayAsked } from "./paperWorker.ts";

/** Pictures of printed pages as the page needs them: brought to the host, and made ready to be laid under the drawing. */
export interface Pictures {
  put(bytes: Uint8Array): Promise<Outcome<Picture>>;
  /** The file of a picture; refuses where it is not there. Asked for once. */
  file(sha256: string): Promise<Outcome<Blob>>;
  /** The picture laid down, largest first; null where it cannot be, or where something newer was asked for the same `of`. */
  laid(lay: Lay, of: string): Promise<readonly ImageBitmap[] | null>;
}

/** The part of a worker that pictures need. */
export interface LayPort {
  postMessage(message: LayAsked): void;
  onmessage: ((event: MessageEvent<LayAnswered>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  readonly lay: Lay;
  readonly of: string;
  readonly done: (levels: readonly ImageBitmap[] | null) => void;
}

/** Files that are kept at hand, newest last. */
const MOST_FILES = 12;

/**
 * Pictures of a host, made ready by a worker that is started when the first is asked for. One is made at a time; of several
 * that wait for the same printed page only the newest is. What goes wrong in it is noted.
 */
export function picturesOf(host: Host, start: () => LayPort, mishaps: Pick<Mishaps, "note">): Pictures {
  const files = new Map<string, Promise<Outcome<Blob>>>();
  let waiting: readonly Waiting[] = [];
  let now: Waiting | null = null;
  let port: LayPort | null = null;
  let number = 0;

  const file = (sha256: string): Promise<Outcome<Blob>> => {
    const known = files.get(sha256);
    files.delete(sha256);
    const asked = known ?? fetched(host, sha256);
    files.set(sha256, asked);
    if (files.size > MOST_FILES) files.delete(files.keys().next().value!);
    // What could not be fetched is asked for again next time.
    void asked.then(
      (outcome) => !outcome.ok && files.delete(sha256),
      () => files.delete(sha256),
    );
    return asked;
  };
  const end = (levels: readonly ImageBitmap[] | null): void => {
    now?.done(levels);
    now = null;
    next();
  };
  const next = (): void => {
    const [first, ...rest] = waiting;
    if (now || !first) return;
    waiting = rest;
    now = first;
    number += 1;
    const asked = number;
    file(first.lay.sha256).then(
      (outcome) => {
        if (!outcome.ok) return end(null);
        port ??= begun();
        port.postMessage({ number: asked, lay: first.lay, file: outcome.value });
      },
      () => end(null),
    );
  };
  const begun = (): LayPort => {
    const made = start();
    made.onmessage = ({ data }) => {
      if (isTrouble(data)) mishaps.note(faultOf(data), "worker");
      if (data.number === number) end(data.levels.length > 0 ? data.levels : null);
    };
    made.onerror = () => end(null);
    return made;
  };
  return {
    put: async (bytes) => host.ask("pictures.put", { bytes: base64Of(bytes) }),
    file,
    laid: (lay, of) =>
      new Promise((done) => {
        for (const each of waiting) if (each.of === of) each.done(null);
        waiting = [...waiting.filter((each) => each.of !== of), { lay, of, done }];
        next();
      }),
  };
}

async function fetched(host: Host, sha256: string): Promise<Outcome<Blob>> {
  const answer = await host.ask("pictures.get", { sha256 });
  if (!answer.ok) return answer;
  return { ok: true, value: new Blob([bytesOf(answer.value.bytes)], { type: answer.value.mime }) };
}
