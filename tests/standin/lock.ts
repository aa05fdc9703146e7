import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, watch, writeFileSync } from "node:fs";
import { join } from "node:path";

/** What a second start hands to the first. */
export interface Start {
  readonly words: readonly string[];
  readonly folder: string;
  readonly data: unknown;
}

/** True where this is the first start on a folder; it is then told of later ones. A later one leaves word and gets false. */
export function takeLock(folder: string, start: Start, second: (start: Start) => void): boolean {
  const lock = join(folder, "standin-lock");
  mkdirSync(lock, { recursive: true });
  const owner = join(lock, "owner");
  if (isAlive(owner)) {
    const word = join(lock, `${process.pid}.json`);
    writeFileSync(`${word}.part`, JSON.stringify(start));
    renameSync(`${word}.part`, word);
    return false;
  }
  for (const left of readdirSync(lock)) rmSync(join(lock, left));
  writeFileSync(owner, String(process.pid));
  watch(lock, { persistent: false }, (_event, name) => {
    if (!name?.endsWith(".json")) return;
    const said = takenText(join(lock, name));
    if (said !== null) second(JSON.parse(said) as Start);
  });
  process.once("exit", () => rmSync(lock, { recursive: true, force: true }));
  return true;
}

function isAlive(owner: string): boolean {
  try {
    return process.kill(Number(readFileSync(owner, "utf8")), 0);
  } catch {
    return false;
  }
}

/** The text of a file, which is gone then; null where it is gone already. */
function takenText(file: string): string | null {
  try {
    const text = readFileSync(file, "utf8");
    rmSync(file);
    return text;
  } catch {
    return null;
  }
}
