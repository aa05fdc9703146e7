import type { CallName } from "../../schemas/calls.ts";
import { ABOUT_ANSWERS } from "./about.ts";
import { ATTEMPT_ANSWERS } from "./attempts.ts";
import { CIRCUIT_ANSWERS } from "./circuits.ts";
import { EXPORT_ANSWERS } from "./export.ts";
import { FILE_ANSWERS } from "./files.ts";
import type { AnswerOf } from "./host.ts";
import { JOB_ANSWERS } from "./jobs.ts";
import { MARK_ANSWERS } from "./marks.ts";
import { PICTURE_ANSWERS } from "./pictures.ts";
import { PRINT_ANSWERS } from "./print.ts";
import { SAMPLE_ANSWERS } from "./samples.ts";
import { SETTING_ANSWERS } from "./settings.ts";
import { VERSION_ANSWERS } from "./versions.ts";
import { WINDOW_ANSWERS } from "./window.ts";

/** Every call with its function, the same for all hosts. */
export const ANSWERS: { readonly [N in CallName]: AnswerOf<N> } = {
  ...WINDOW_ANSWERS,
  ...CIRCUIT_ANSWERS,
  ...VERSION_ANSWERS,
  ...JOB_ANSWERS,
  ...ATTEMPT_ANSWERS,
  ...SAMPLE_ANSWERS,
  ...SETTING_ANSWERS,
  ...FILE_ANSWERS,
  ...MARK_ANSWERS,
  ...PICTURE_ANSWERS,
  ...PRINT_ANSWERS,
  ...EXPORT_ANSWERS,
  ...ABOUT_ANSWERS,
};
