import { join, resolve } from "node:path";

/** What the place of the library depends on. */
export interface Surroundings {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The person's home folder. */
  readonly home: string;
}

/**
 * The folder of this person's library: `WIREFATHOM_DATA` where it is set, else where the platform keeps what programs
 * store (on Linux by the XDG Base Directory Specification).
 */
export function dataFolder({ platform, env, home }: Surroundings): string {
  if (env.WIREFATHOM_DATA) return resolve(env.WIREFATHOM_DATA);
  switch (platform) {
    case "win32":
      return join(env.APPDATA || join(home, "AppData", "Roaming"), "Wirefathom");
    case "darwin":
      return join(home, "Library", "Application Support", "Wirefathom");
    default: {
      // The specification has relative paths ignored.
      const base = env.XDG_DATA_HOME?.startsWith("/") ? env.XDG_DATA_HOME : join(home, ".local", "share");
      return join(base, "wirefathom");
    }
  }
}
