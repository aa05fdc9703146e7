import { beginJob } from "./beginJob.ts";
import { changeJob } from "./changeJob.ts";
import { dropWeight } from "./dropWeight.ts";
import { fileVerdict } from "./fileVerdict.ts";
import { putJobAway } from "./putJobAway.ts";
import { setWeight } from "./setWeight.ts";
import { takeJobUp } from "./takeJobUp.ts";

/** Commands on the job in hand, and on what weighs otherwise than guessed; `index.ts` lists them with all others. */
export const JOB_COMMANDS = [
  { id: "begin-job", key: null, make: beginJob },
  { id: "change-job", key: null, make: changeJob },
  { id: "file-verdict", key: null, make: fileVerdict },
  { id: "put-job-away", key: null, make: putJobAway },
  { id: "take-job-up", key: null, make: takeJobUp },
  { id: "set-weight", key: null, make: setWeight },
  { id: "drop-weight", key: null, make: dropWeight },
] as const;
