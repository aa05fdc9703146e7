import { PACKAGE_NAMES } from "../../core/base/words/packaging.ts";
import { escaped } from "../../core/drawing/svg.ts";
import { FILE_KINDS } from "./fileKinds.ts";

/** The name that desktop entry, icons, package and command share. */
export const UNIX_NAME = "wirefathom";

/** What a Linux desktop is told of the program (Desktop Entry Specification 1.4). */
export function desktopEntry(): string {
  const list = (items: readonly string[]): string => items.map((item) => `${item};`).join("");
  const lines = {
    Type: "Application",
    Version: "1.4",
    Name: "Wirefathom",
    GenericName: PACKAGE_NAMES.generic,
    Comment: PACKAGE_NAMES.about,
    Exec: `${UNIX_NAME} %f`,
    Icon: UNIX_NAME,
    Terminal: "false",
    Categories: list(["Education", "Engineering", "Electronics"]),
    Keywords: list(PACKAGE_NAMES.keywords),
    MimeType: list(FILE_KINDS.map(({ mime }) => mime)),
    StartupNotify: "true",
    StartupWMClass: "Wirefathom",
  };
  return ["[Desktop Entry]", ...Object.entries(lines).map(([key, value]) => `${key}=${value}`), ""].join("\n");
}

/** More than the 50 of a common pattern: `*.circuit.json` must win over `*.json`. */
const WEIGHT = 60;

/** Kinds of file for the shared MIME database of a desktop (Shared MIME-info Database specification). */
export function mimeKinds(): string {
  const kinds = FILE_KINDS.map(
    ({ ending, mime, of, words }) => `  <mime-type type="${mime}">
    <comment>${escaped(words)}</comment>
    <sub-class-of type="${of}"/>
    <icon name="${UNIX_NAME}"/>
    <glob pattern="*.${ending}" weight="${WEIGHT}"/>
  </mime-type>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">
${kinds.join("\n")}
</mime-info>
`;
}
