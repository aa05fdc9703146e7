import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { FuseV1Options } from "@electron/fuses";
import { type Zippable, zipSync } from "fflate";
import { Data, NtExecutable, NtExecutableResource, Resource } from "resedit";
import { iconFile, icoOf } from "../../electron/packaging/icons.ts";
import type { Target } from "../../electron/packaging/pack.ts";
import { ROOT } from "./sample.ts";

/** What stands before the fuses in Electron's program (its fuses tutorial), then version, count and a sign for each. */
const SENTINEL = "dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX";
const FUSES = Object.values(FuseV1Options).filter((each) => typeof each === "number").length;

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const program = (bytes: Uint8Array): Zippable[string] => [bytes, { os: 3, attrs: 0o100755 << 16 }];

/** A program that does nothing but hold so many fuses, all on. */
function fused(count: number): Buffer {
  const wire = Buffer.concat([Buffer.from(SENTINEL), Buffer.from([1, count]), Buffer.alloc(count, "1")]);
  return Buffer.concat([Buffer.from("\u007fELF, and no program"), wire, Buffer.alloc(64)]);
}

/** The same as Windows has it: with an icon, a version, and the fuses after its end. */
function fusedExe(count: number): Buffer {
  const exe = NtExecutable.createEmpty(false, false);
  const resources = NtExecutableResource.from(exe);
  const icon = Data.IconFile.from(icoOf([[16, readFileSync(join(ROOT, iconFile(16)))]]));
  const lang = 1033;
  Resource.IconGroupEntry.replaceIconsForResource(
    resources.entries,
    1,
    lang,
    icon.icons.map(({ data }) => data),
  );
  const strings = [{ lang, codepage: 1200, values: { ProductName: "Electron" } }];
  const version = Resource.VersionInfo.create({ lang, fixedInfo: {}, strings });
  version.outputToResourceEntries(resources.entries);
  resources.outputResource(exe);
  exe.setExtraData(new Uint8Array(fused(count)).buffer);
  return Buffer.from(exe.generate());
}

function plist(name: string): Uint8Array {
  return text(`<?xml version="1.0" encoding="UTF-8"?>
<plist version="1.0"><dict>
<key>CFBundleExecutable</key><string>${name}</string>
<key>CFBundleIconFile</key><string>electron.icns</string>
<key>CFBundleName</key><string>${name}</string>
</dict></plist>`);
}

const LICENCES = { LICENSE: text("of Electron"), "LICENSES.chromium.html": text("of Chromium") };

/** The files of an archive of Electron, as far as a packager looks at them. */
function filesFor({ platform }: Target, version: string, count: number): Zippable {
  const common = { ...LICENCES, version: text(version) };
  switch (platform) {
    case "linux":
      return {
        ...common,
        electron: program(fused(count)),
        "chrome-sandbox": program(text("helper")),
        "libffmpeg.so": program(text("library")),
        "resources/default_app.asar": text("default"),
      };
    case "win32":
      return { ...common, "electron.exe": fusedExe(count), "resources/default_app.asar": text("default") };
    case "darwin": {
      const inside = "Electron.app/Contents";
      const helper = `${inside}/Frameworks/Electron Helper.app/Contents`;
      return {
        ...common,
        [`${inside}/Info.plist`]: plist("Electron"),
        [`${inside}/MacOS/Electron`]: program(text("starter")),
        [`${inside}/Resources/electron.icns`]: text("icon"),
        [`${inside}/Resources/default_app.asar`]: text("default"),
        [`${inside}/Frameworks/Electron Framework.framework/Electron Framework`]: program(fused(count)),
        [`${helper}/Info.plist`]: plist("Electron Helper"),
        [`${helper}/MacOS/Electron Helper`]: program(text("helper")),
      };
    }
  }
}

/**
 * Puts an archive into a folder that stands for that of Electron's program where this cannot be had: all that a packager looks at,
 * and nothing that runs. `fuses` is how many it has.
 */
export function standInArchive(folder: string, target: Target, version: string, fuses = FUSES): void {
  const name = `electron-v${version}-${target.platform}-${target.arch}.zip`;
  writeFileSync(join(folder, name), zipSync(filesFor(target, version, fuses)));
}
