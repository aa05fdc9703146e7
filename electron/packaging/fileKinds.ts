import { PACKAGE_NAMES } from "../../core/base/words/packaging.ts";

/** A kind of file that the program opens, as systems are told of it. */
export interface FileKind {
  /** How its name ends, without the first dot. */
  readonly ending: string;
  readonly mime: string;
  /** The kind it is a special case of. */
  readonly of: "application/json" | "application/zip";
  readonly words: string;
}

const json = (kind: "circuit" | "job" | "exercise" | "handin"): FileKind => ({
  ending: `${kind}.json`,
  mime: `application/vnd.wirefathom.${kind}+json`,
  of: "application/json",
  words: PACKAGE_NAMES[kind],
});

/** All that the program opens from the desktop. */
export const FILE_KINDS: readonly FileKind[] = [
  { ending: "wirefathom", mime: "application/vnd.wirefathom+zip", of: "application/zip", words: PACKAGE_NAMES.packed },
  json("circuit"),
  json("job"),
  json("exercise"),
  json("handin"),
];
