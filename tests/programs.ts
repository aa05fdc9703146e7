import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** True where a program is on this machine. */
export function hasProgram(name: string): boolean {
  return spawnSync(name, ["--version"], { stdio: "ignore" }).error === undefined;
}

/** True where a package was installed on Debian, by root or by one who may be root without being asked. */
export function install(name: string): boolean {
  if (!existsSync("/etc/debian_version")) return false;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status !== 0) return false;
  const apt = (...words: readonly string[]): boolean => {
    const line = ["env", "DEBIAN_FRONTEND=noninteractive", "apt-get", ...words];
    const [program = "", ...rest] = isRoot ? line : ["sudo", "-n", ...line];
    return spawnSync(program, rest, { stdio: "inherit" }).status === 0;
  };
  // One source of several that does not answer is no reason not to try.
  apt("update");
  return apt("install", "-y", "--no-install-recommends", name);
}
