import type { CommandId } from "../../core/edit/commands/index.ts";
import type { Cases } from "./cases/cases.ts";
import { CONNECTOR_CASES } from "./cases/connectors.ts";
import { INSTRUMENT_CASES } from "./cases/instruments.ts";
import { JOB_CASES } from "./cases/jobs.ts";
import { PART_CASES } from "./cases/parts.ts";
import { HEAD_CASES, PLACE_CASES } from "./cases/places.ts";
import { PRINTED_CASES } from "./cases/printed.ts";
import { STANDING_CASES } from "./cases/standing.ts";
import { TABLE_CASES } from "./cases/tables.ts";
import { VALUE_CASES } from "./cases/values.ts";
import { WIRE_CASES } from "./cases/wires.ts";

/** Good and bad cases of every command; they stand by topic in `cases/`. */
export const CASES: Readonly<Record<CommandId, Cases>> = {
  ...STANDING_CASES,
  ...VALUE_CASES,
  ...PART_CASES,
  ...WIRE_CASES,
  ...CONNECTOR_CASES,
  ...TABLE_CASES,
  ...PLACE_CASES,
  ...HEAD_CASES,
  ...PRINTED_CASES,
  ...JOB_CASES,
  ...INSTRUMENT_CASES,
};
