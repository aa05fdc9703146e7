import type { ElectronApplication, Page } from "@playwright/test";

/** The two hosts that show the page. */
export type HostName = "loopback" | "electron";

/** A file as it came out of the program. */
export interface SavedFile {
  readonly name: string;
  readonly bytes: Buffer;
}

/** What a host does for a story. */
export interface OpenProgram {
  /** What ran the page, by name and version: told with the results. */
  readonly engine: string;
  readonly page: Page;
  /** Electron's own side; null in a browser. */
  readonly app: ElectronApplication | null;
  /** Ends as a person ends it, with all that was done kept. */
  close(): Promise<void>;
  /** Ends at once, as at a power cut. */
  kill(): Promise<void>;
  /** The file that comes out of what is done meanwhile. */
  saved(act: () => Promise<unknown>): Promise<SavedFile>;
  /** Gives a file where what is done meanwhile asks for one. */
  chooses(file: string, act: () => Promise<unknown>): Promise<void>;
}
