import { beginJob } from "./beginJob.ts";
import { changeJob } from "./changeJob.ts";
import { fileVerdict } from "./fileVerdict.ts";
import { putJobAway } from "./putJobAway.ts";
import { takeJobUp } from "./takeJobUp.ts";

/** Commands on the job in hand; `index.ts` lists them with all others. */
export const JOB_COMMANDS = [
  { id: "begin-job", key: null, make: beginJob },
  { id: "change-job", key: null, make: changeJob },
  { id: "file-verdict", key: null, make: fileVerdict },
  { id: "put-job-away", key: null, make: putJobAway },
  { id: "take-job-up", key: null, make: takeJobUp },
] as const;
