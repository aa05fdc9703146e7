import { changeInstrumentAmps } from "./changeInstrumentAmps.ts";
import { clampRound } from "./clampRound.ts";
import { clipLead } from "./clipLead.ts";
import { layInstrument } from "./layInstrument.ts";
import { putInstrumentAway } from "./putInstrumentAway.ts";
import { renewJumper } from "./renewJumper.ts";

/** Commands on the instruments of the bench; `index.ts` lists them with all others. */
export const INSTRUMENT_COMMANDS = [
  { id: "lay-instrument", key: null, make: layInstrument },
  { id: "put-instrument-away", key: null, make: putInstrumentAway },
  { id: "clip-lead", key: null, make: clipLead },
  { id: "clamp-round", key: null, make: clampRound },
  { id: "change-instrument-amps", key: null, make: changeInstrumentAmps },
  { id: "renew-jumper", key: null, make: renewJumper },
] as const;
