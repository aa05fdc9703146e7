import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, isBuilt } from "../build.ts";
import { ROOT } from "../root.ts";
import { debianPackage } from "./debian.ts";
import { pack, TARGETS, type Target } from "./pack.ts";
import { REGISTER, registerScript } from "./windows.ts";

// Run by `npm run package -- TARGET...`: a target is linux-x64, win32-arm64 and so on; this system's own without one, `all` for every one.
const out = join(ROOT, "out", "packages");
const nameOf = ({ platform, arch }: Target): string => `${platform}-${arch}`;

try {
  if (!isBuilt(ROOT)) await build(ROOT);
  for (const target of wanted(process.argv.slice(2))) {
    const folder = await pack({ root: ROOT, out, target, ...archivesHere() });
    if (target.platform === "win32") writeFileSync(join(folder, REGISTER), registerScript());
    process.stdout.write(`${folder}\n`);
    if (target.platform !== "linux") continue;
    process.stdout.write(
      `${debianPackage({ root: ROOT, packed: folder, out, arch: target.arch, made: new Date() })}\n`,
    );
  }
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}

function wanted(words: readonly string[]): readonly Target[] {
  if (words.includes("all")) return TARGETS;
  const names = words.length > 0 ? words : [`${process.platform}-${process.arch}`];
  return names.map((name) => {
    const target = TARGETS.find((each) => nameOf(each) === name);
    if (!target) throw new Error(`There is no target ${name}: there are ${TARGETS.map(nameOf).join(", ")} and all.`);
    return target;
  });
}

/** Where archives of Electron lie already, as where no network is. */
function archivesHere(): { readonly archives?: string } {
  const archives = process.env.ELECTRON_ARCHIVES;
  return archives ? { archives } : {};
}
