import type { Console } from "./console.ts";

/** The terminal this process runs in. A reader that stops listening, as `head` does, ends it quietly. */
export function screen(): Console {
  process.stdout.on("error", (error: Error & { code?: string }) => {
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
  return {
    write: (text) => process.stdout.write(text),
    complain: (text) => process.stderr.write(text),
    hasColour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
    width: process.stdout.columns ?? 100,
  };
}
