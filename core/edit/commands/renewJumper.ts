import { type Outcome, refuse } from "../../base/outcome.ts";
import { INSTRUMENT_EDITS } from "../../base/words/instruments.ts";
import { fuseOf } from "../../live/instruments/clipped.ts";
import type { Bench } from "../bench.ts";
import { instrumentOn } from "../clipping.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn, withGoodFuse } from "../editOf.ts";

/** Puts a good fuse into a jumper whose own has melted; it may melt again at once. Refuses `instrument-absent` and `jumper-whole`. */
export function renewJumper(bench: Bench, id: string): Outcome<Edit> {
  const on = instrumentOn(bench, id);
  if (!on.ok) return on;
  const { good, now } = goingOn(bench).value;
  const fuse = fuseOf(id);
  if (good[fuse] === undefined && now[fuse] === undefined) return refuse("jumper-whole");
  return editOf(bench, INSTRUMENT_EDITS.renewJumper, [
    { change: "bench", field: "before", value: withGoodFuse(bench, id) },
  ]);
}
