import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { flipFuses } from "@electron/fuses";
import { type OfficialPlatform, packager } from "@electron/packager";
import { FUSES } from "./fuses.ts";
import { writeIcons } from "./icons.ts";
import { infoPlist } from "./mac.ts";

/** A system and a processor that the program is packed for. */
export interface Target {
  readonly platform: "linux" | "win32" | "darwin";
  readonly arch: "x64" | "arm64";
}

/** All that the program is packed for. */
export const TARGETS: readonly Target[] = (["linux", "win32", "darwin"] as const).flatMap((platform) =>
  (["x64", "arm64"] as const).map((arch) => ({ platform, arch })),
);

/** What is said of the program in one place, `package.json`, and read from there alone. */
export interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly description: string;
  readonly author: string;
  readonly license: string;
  readonly main: string;
  readonly devDependencies: { readonly electron: string };
}

/** The project's own manifest. */
export function manifestOf(root: string): Manifest {
  return JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as Manifest;
}

/** What is packed and where to. */
export interface PackWish {
  readonly root: string;
  /** Folder that gets a folder for the target. */
  readonly out: string;
  readonly target: Target;
  /** A folder with Electron's archives; without it they are fetched, and kept by the fetcher. */
  readonly archives?: string;
}

const ID = "org.wirefathom.app";

/**
 * Packs what is built under `out/` with Electron for one target, into a folder whose path comes back. Fails where Electron's
 * archive cannot be had, and where that Electron has a fuse that is not named in `fuses.ts`.
 */
export async function pack({ root, out, target, archives }: PackWish): Promise<string> {
  const { author, version, devDependencies } = manifestOf(root);
  const { platform, arch } = target;
  const icons = mkdtempSync(join(tmpdir(), "wirefathom-icons-"));
  const [folder] = await packager({
    dir: root,
    out,
    platform,
    arch,
    name: "Wirefathom",
    // Debian's packages, and people who type, want it low.
    ...(platform === "linux" && { executableName: "wirefathom" }),
    appBundleId: ID,
    appVersion: version,
    appCopyright: author,
    appCategoryType: "public.app-category.developer-tools",
    electronVersion: devDependencies.electron,
    ...(archives !== undefined && { electronZipDir: archives }),
    icon: writeIcons(root, icons),
    ...(platform === "darwin" && { extendInfo: infoPlist() }),
    asar: { unpack: "**/*.node" },
    // What goes in is listed below, file by file; the packager need not find out what is wanted at run time.
    prune: false,
    ignore: (path) => !isPacked(path, target),
    sanitizePackageJson: [ownManifest],
    overwrite: true,
    quiet: true,
  });
  rmSync(icons, { recursive: true, force: true });
  if (folder === undefined) throw new Error(`nothing was packed for ${platform}-${arch}`);
  await flipFuses(programIn(folder, platform), {
    ...FUSES,
    // Apple's processors run nothing without at least a signature of this machine's own, which only macOS makes.
    resetAdHocDarwinSignature: platform === "darwin" && process.platform === "darwin",
  });
  return folder;
}

/** Path of Electron's program in a packed folder. */
export function programIn(folder: string, platform: OfficialPlatform): string {
  switch (platform) {
    case "darwin":
      return join(folder, "Wirefathom.app");
    case "win32":
      return join(folder, "Wirefathom.exe");
    default:
      return join(folder, "wirefathom");
  }
}

/** What of the built program and its samples goes in, by the beginning of its path. */
const PACKED = [
  "/package.json",
  "/LICENSE",
  "/samples",
  "/out/renderer",
  "/out/electron",
  "/out/takehome",
  "/out/licences.json",
];
const SQLITE = "/node_modules/better-sqlite3";
/** What of SQLite runs; the rest is what it is compiled from. */
const OF_SQLITE = ["/package.json", "/LICENSE", "/lib"];

/** True for a path under the project that goes into the program of a target, and for the folders on the way to it. */
export function isPacked(path: string, { platform, arch }: Target): boolean {
  const compiled = `${SQLITE}/prebuilds/${platform}-${arch}.node`;
  const wanted = [...PACKED, ...OF_SQLITE.map((each) => SQLITE + each), compiled];
  return wanted.some((each) => path === each || path.startsWith(`${each}/`) || each.startsWith(`${path}/`));
}

/** The manifest without what only those who build the program need. */
function ownManifest({ name, version, description, author, license, main, type }: Readonly<Record<string, unknown>>) {
  return { name, productName: "Wirefathom", version, description, author, license, main, type };
}
