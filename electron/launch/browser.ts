import { spawn } from "node:child_process";

/** How a platform is asked to open an address: the programs that may do it, the likeliest first, each with its words. */
export function browserCommands(platform: string, address: string): readonly (readonly [string, ...string[]])[] {
  switch (platform) {
    case "win32":
      return [["rundll32", "url.dll,FileProtocolHandler", address]];
    case "darwin":
      return [["open", address]];
    default:
      return ["xdg-open", "sensible-browser", "x-www-browser", "firefox", "chromium"].map((name) => [name, address]);
  }
}

/** Opens an address in the person's browser. Where there is none nothing happens: the address was printed too. */
export function openBrowser(platform: string, address: string): void {
  startFirst(browserCommands(platform, address));
}

/** Starts the first of these programs that is there, and lets it go its own way. */
export function startFirst([command, ...others]: ReturnType<typeof browserCommands>): void {
  if (command === undefined) return;
  const [program, ...words] = command;
  const child = spawn(program, words, { stdio: "ignore", detached: true });
  child.once("error", () => startFirst(others));
  child.unref();
}
