import { open as openWindow } from "../open.ts";
import { type Console, need } from "./console.ts";

/** `open [FILE] [--library STRING]`: shows the window and comes back when it was closed. */
export async function open(
  console: Console,
  file: string | undefined,
  { library }: { readonly library?: string } = {},
): Promise<number> {
  return need(await openWindow(file ?? null, console, library ?? null));
}
