import { randomUUID } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";

const FILE = "person.txt";
const ID = /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/;

/**
 * The id under which a shared library keeps this person's settings and benches; it is kept in a file of this machine's, and made
 * where there is none. Throws what the disk says.
 */
export async function personIn(folder: string): Promise<string> {
  const file = join(folder, FILE);
  const known = existsSync(file) ? readFileSync(file, "utf8").trim() : "";
  if (ID.test(known)) return known;
  const id = randomUUID();
  await mkdir(folder, { recursive: true, mode: 0o700 });
  await writeFile(file, `${id}\n`, { mode: 0o600 });
  return id;
}
