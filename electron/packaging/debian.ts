import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { gzipSync } from "node:zlib";
import { PACKAGE_NAMES } from "../../core/base/words/packaging.ts";
import { desktopEntry, mimeKinds, UNIX_NAME } from "./desktop.ts";
import { ICON_SIZES, ICON_SVG, iconFile } from "./icons.ts";
import { manifestOf, type Target } from "./pack.ts";

/** Debian's names of processors. */
const ARCHITECTURES: Readonly<Record<Target["arch"], string>> = { x64: "amd64", arm64: "arm64" };

/**
 * Libraries that Electron's program is linked with: those that Debian's own Chromium names and Electron does not bring itself.
 * Where Debian 13 gave a library another name, it still answers to this one.
 */
const DEPENDS = [
  "libasound2",
  "libatk-bridge2.0-0",
  "libatk1.0-0",
  "libatspi2.0-0",
  "libc6",
  "libcairo2",
  "libcups2",
  "libdbus-1-3",
  "libexpat1",
  "libgbm1",
  "libglib2.0-0",
  "libgtk-3-0",
  "libnspr4",
  "libnss3",
  "libpango-1.0-0",
  "libudev1",
  "libx11-6",
  "libxcb1",
  "libxcomposite1",
  "libxdamage1",
  "libxext6",
  "libxfixes3",
  "libxkbcommon0",
  "libxrandr2",
] as const;

const LIBRARY = `usr/lib/${UNIX_NAME}`;
/** Who answers for the package; an address that no mail reaches, until there is one. */
const ADDRESS = "maintainers@wirefathom.invalid";

/** What a Debian package is made of. */
export interface DebianWish {
  readonly root: string;
  /** Folder of the packed program. */
  readonly packed: string;
  readonly out: string;
  readonly arch: Target["arch"];
  /** The day of making, which the changelog names. */
  readonly made: Date;
}

/**
 * Makes a Debian package of the packed program and says where it is: program under `/usr/lib`, command under `/usr/bin`, entry,
 * icons and kinds of file for the desktop. No script runs when it is put in. Fails where `dpkg-deb` is not there.
 */
export function debianPackage({ root, packed, out, arch, made }: DebianWish): string {
  const { author, version } = manifestOf(root);
  const maintainer = `${author} <${ADDRESS}>`;
  const tree = join(out, "debian");
  rmSync(tree, { recursive: true, force: true });
  const put = (path: string, content: string | Buffer, mode = 0o644): void => {
    const place = join(tree, path);
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, content);
    chmodSync(place, mode);
  };
  cpSync(packed, join(tree, LIBRARY), { recursive: true });
  evenModes(join(tree, LIBRARY));
  put(`usr/bin/${UNIX_NAME}`, LAUNCHER, 0o755);
  put(`usr/share/applications/${UNIX_NAME}.desktop`, desktopEntry());
  put(`usr/share/mime/packages/${UNIX_NAME}.xml`, mimeKinds());
  for (const size of ICON_SIZES.filter((each) => each <= 512))
    put(`usr/share/icons/hicolor/${size}x${size}/apps/${UNIX_NAME}.png`, readFileSync(join(root, iconFile(size))));
  put(`usr/share/icons/hicolor/scalable/apps/${UNIX_NAME}.svg`, readFileSync(join(root, ICON_SVG)));
  put(`usr/share/doc/${UNIX_NAME}/copyright`, copyright(readFileSync(join(root, "LICENSE"), "utf8")));
  put(`usr/share/doc/${UNIX_NAME}/changelog.gz`, gzipSync(changelog(version, maintainer, made), { level: 9 }));
  const files = filesIn(tree);
  put("DEBIAN/md5sums", files.map((path) => `${md5(join(tree, path))}  ${path}\n`).join(""));
  put("DEBIAN/control", control(version, maintainer, ARCHITECTURES[arch], sizeKb(tree, files)));
  const file = join(out, `${UNIX_NAME}_${version}_${ARCHITECTURES[arch]}.deb`);
  const done = spawnSync("dpkg-deb", ["--build", "--root-owner-group", tree, file], { encoding: "utf8" });
  if (done.status !== 0) throw new Error(`dpkg-deb made no package: ${done.error?.message ?? done.stderr}`);
  rmSync(tree, { recursive: true, force: true });
  return file;
}

/** A command needs no screen; Chromium would still seek one, and end where there is none. */
const LAUNCHER = `#!/bin/sh
if [ -z "\${DISPLAY-}\${WAYLAND_DISPLAY-}" ]; then set -- --ozone-platform=headless "$@"; fi
exec /${LIBRARY}/${UNIX_NAME} "$@"
`;

/** All may read and only root may write; Chromium's sandbox is its helper's, who must be root's for systems without user namespaces. */
function evenModes(folder: string): void {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) evenModes(path);
    else if (entry.isFile()) chmodSync(path, modeOf(entry.name, statSync(path).mode));
  }
}

function modeOf(name: string, mode: number): number {
  if (name === "chrome-sandbox") return 0o4755;
  const isLibrary = name.endsWith(".node") || name.includes(".so");
  return (mode & 0o100) !== 0 && !isLibrary ? 0o755 : 0o644;
}

function filesIn(tree: string): readonly string[] {
  return readdirSync(tree, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(tree, join(entry.parentPath, entry.name)))
    .toSorted();
}

function md5(path: string): string {
  return createHash("md5").update(readFileSync(path)).digest("hex");
}

/** What the files take on a disk, in whole kB each, as Debian's policy 5.6.20 has it. */
function sizeKb(tree: string, files: readonly string[]): number {
  return files.reduce((sum, path) => sum + Math.ceil(statSync(join(tree, path)).size / 1024), 0);
}

function control(version: string, maintainer: string, architecture: string, kb: number): string {
  const paragraphs = [PACKAGE_NAMES.about, ...PACKAGE_NAMES.more].map(wrapped).join("\n .\n");
  return `Package: ${UNIX_NAME}
Version: ${version}
Architecture: ${architecture}
Maintainer: ${maintainer}
Installed-Size: ${kb}
Depends: ${DEPENDS.join(", ")}
Recommends: xdg-utils
Section: electronics
Priority: optional
Description: ${PACKAGE_NAMES.generic.toLowerCase()} for vehicle electricians
${paragraphs}
`;
}

/** A paragraph in lines of less than 80 signs, each begun as a control file wants it. */
function wrapped(paragraph: string): string {
  return paragraph.replace(/(.{1,76})(?:\s+|$)/g, " $1\n").trimEnd();
}

function copyright(licence: string): string {
  const [, holder = "", body = ""] = /^MIT License\s+(Copyright[^\n]*)\s+(.*)$/s.exec(licence) ?? [];
  const text = body
    .trimEnd()
    .split("\n")
    .map((line) => (line === "" ? " ." : ` ${line}`));
  return `Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/
Upstream-Name: Wirefathom
Comment: Electron and what it brings say theirs in /${LIBRARY}/LICENSE and LICENSES.chromium.html;
 what else is in the program is listed by the program itself, under Help, About.

Files: *
Copyright: ${holder.replace(/^Copyright \(c\) /, "")}
License: Expat
${text.join("\n")}
`;
}

function changelog(version: string, maintainer: string, made: Date): string {
  const day = made.toUTCString().replace("GMT", "+0000");
  return `${UNIX_NAME} (${version}) stable; urgency=medium

  * Version ${version}.

 -- ${maintainer}  ${day}
`;
}
