import { clearReadings } from "./clearReadings.ts";
import { markReading } from "./markReading.ts";
import { removeReading } from "./removeReading.ts";
import { setBatteryVolts } from "./setBatteryVolts.ts";
import { setSleepingAmps } from "./setSleepingAmps.ts";
import { setWhen } from "./setWhen.ts";
import { takeReadings } from "./takeReadings.ts";
import { takeWiggled } from "./takeWiggled.ts";

/** Commands that keep what was read; `index.ts` lists them with all others. */
export const READING_COMMANDS = [
  { id: "take-readings", key: null, make: takeReadings },
  { id: "mark-reading", key: null, make: markReading },
  { id: "remove-reading", key: null, make: removeReading },
  { id: "clear-readings", key: null, make: clearReadings },
  { id: "set-battery-volts", key: null, make: setBatteryVolts },
  { id: "take-wiggled", key: null, make: takeWiggled },
  { id: "set-when", key: null, make: setWhen },
  { id: "set-sleeping-amps", key: null, make: setSleepingAmps },
] as const;
