import type { Ask } from "../../schemas/calls.ts";

/** The world outside the page, behind one list of calls. */
export interface Host {
  readonly name: "electron" | "loopback" | "memory";
  /** Rejects where the host is gone or at fault; a wrong entry comes back as a refusal. */
  readonly ask: Ask;
}
