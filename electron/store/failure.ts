import { type Refusal, refuse } from "../../core/base/outcome.ts";

/** Beginnings of the codes that SQLite and the file system give, and what each is to a person. */
const REFUSALS: readonly (readonly [code: RegExp, refusal: string])[] = [
  [/^(SQLITE_(BUSY|LOCKED|PROTOCOL)|EBUSY)/, "store-locked"],
  [/^(SQLITE_(READONLY|CANTOPEN|PERM|AUTH)|EACCES|EPERM|EROFS)/, "store-read-only"],
  [/^(SQLITE_FULL|ENOSPC|EDQUOT)/, "store-full"],
  [/^SQLITE_(CORRUPT|NOTADB)/, "store-damaged"],
  [/^(SQLITE_IOERR|EIO)/, "store-unwritable"],
  [/^(ENOTDIR|EEXIST|ENOENT|EISDIR)/, "store-no-folder"],
  // Whatever else a file system says, as that too many files are open; codes of Node's own have a line in them.
  [/^E[A-Z0-9]+$/, "store-unwritable"],
];

/** What a failure of the disk or of SQLite means to a person, or null where it is a fault of the program's own. */
export function storeRefusal(error: unknown, folder: string): Refusal | null {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const known = REFUSALS.find(([pattern]) => pattern.test(code));
  return known ? refuse(known[1], { folder }).refusal : null;
}

/** True where the error says that the file is damaged or no database at all. */
export function isDamage(error: unknown): boolean {
  return storeRefusal(error, "")?.code === "store-damaged";
}
