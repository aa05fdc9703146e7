import type { z } from "zod";
import type { Outcome } from "../core/base/outcome.ts";
import type { CallName } from "./callNames.ts";
import { ABOUT_CALLS } from "./calls/about.ts";
import { ATTEMPT_CALLS } from "./calls/attempts.ts";
import type { Call } from "./calls/call.ts";
import { CIRCUIT_CALLS } from "./calls/circuits.ts";
import { EXPORT_CALLS } from "./calls/export.ts";
import { FILE_CALLS } from "./calls/files.ts";
import { JOB_CALLS } from "./calls/jobs.ts";
import { MARK_CALLS } from "./calls/marks.ts";
import { PICTURE_CALLS } from "./calls/pictures.ts";
import { PRINT_CALLS } from "./calls/print.ts";
import { SAMPLE_CALLS } from "./calls/samples.ts";
import { SETTING_CALLS } from "./calls/settings.ts";
import { WINDOW_CALLS } from "./calls/window.ts";

export type { CallName } from "./callNames.ts";
export type { AttemptRow, KeptAttempt } from "./calls/attempts.ts";
export type { BesideRow, CircuitRow, OpenedCircuit, SavedWhere, VersionRow } from "./calls/circuits.ts";
export type { JobRow } from "./calls/jobs.ts";
export type { KeptMark } from "./calls/marks.ts";
export type { SampleRow } from "./calls/samples.ts";
export type { WindowRequest } from "./calls/window.ts";

/** Everything a page can ask of its host, with the schema of what it sends and of what it gets. */
export const CALLS = {
  ...WINDOW_CALLS,
  ...CIRCUIT_CALLS,
  ...JOB_CALLS,
  ...ATTEMPT_CALLS,
  ...SAMPLE_CALLS,
  ...SETTING_CALLS,
  ...FILE_CALLS,
  ...MARK_CALLS,
  ...PICTURE_CALLS,
  ...PRINT_CALLS,
  ...EXPORT_CALLS,
  ...ABOUT_CALLS,
} as const satisfies Readonly<Record<CallName, Call>>;

/** What a page sends with a call; fields with a default may be left out. */
export type Argument<N extends CallName> = z.input<(typeof CALLS)[N]["argument"]>;
/** What the host's function is handed: checked, with the defaults in. */
export type Checked<N extends CallName> = z.output<(typeof CALLS)[N]["argument"]>;
/** What a call answers with. */
export type Answer<N extends CallName> = z.input<(typeof CALLS)[N]["answer"]>;

/** A page's way to its host. A wrong entry comes back as a refusal; it rejects where the host is gone or at fault. */
export type Ask = <N extends CallName>(name: N, argument: Argument<N>) => Promise<Outcome<Answer<N>>>;
