/** Sentences for jobs that cannot be begun, changed or taken up as asked. */
export const JOB_WORDS = {
  "job-shape": "What is known of the job cannot be understood.",
  "job-open": "A job is in hand; put it away first.",
  "job-none": "No job is in hand; begin one first.",
  "job-format": 'This is not a job file: where one says "wirefathom/job" as its format, it says {format}.',
  "job-ending": "{file} must end in .job.json.",
  "job-changed-elsewhere":
    "The job in {file} was changed by another command meanwhile, so nothing was written. Go on from that file, or name another.",
  "job-text": "{what} has at most {most} characters, not {length}.",
  "verdict-unknown":
    "{suspect} is nothing that can be wrong with this circuit; write it as W14:open or X5-6:corroded=20.",
} as const;

/** Names of edits of a job, as they stand after "Undo". */
export const JOB_NAMES = {
  beginJob: (vehicle: string) => (vehicle === "" ? "begin a job" : `begin a job on ${vehicle}`),
  changeJob: "change the job",
  fileVerdict: (suspect: string) => `file the verdict ${suspect}`,
  dropVerdict: "take the verdict back",
  putJobAway: (vehicle: string) => (vehicle === "" ? "put the job away" : `put the job on ${vehicle} away`),
  takeJobUp: (vehicle: string) => (vehicle === "" ? "take up a job" : `take up the job on ${vehicle}`),
} as const;

/** What the texts of a job are called. */
export const JOB_TEXTS = { vehicle: "The vehicle", told: "The complaint", done: "What was done" } as const;

/** Titles of the commands on jobs by id. */
export const JOB_TITLES = {
  "begin-job": "Begin a job",
  "change-job": "Change the job",
  "file-verdict": "File the verdict",
  "put-job-away": "Put the job away",
  "take-job-up": "Take up a job",
} as const;

/** What is to be said of a job and its circuit. */
export const JOB_SENTENCES = {
  otherCircuit: (title: string, here: string) => `The job was noted on another circuit, "${title}", not on "${here}".`,
  otherVersion: (title: string) => `The job was noted on another version of "${title}": its wiring was changed since.`,
  strayReadings: (readings: string, count: number) =>
    count === 1
      ? `Reading ${readings} is kept but does not count: the drawing has no such point or setting.`
      : `Readings ${readings} are kept but do not count: the drawing has no such points or settings.`,
  strayChecks: (checks: string) => `The drawing has no function check ${checks}; what was seen of it is left out.`,
  strayVerdict: (suspect: string) => `The verdict ${suspect} names what the drawing does not have.`,
  likelier: (leader: string, share: string, own: string) =>
    `Likelier by the readings: ${leader}, ${share} against ${own}.`,
  notSuspected: (suspect: string) => `By the drawing, ${suspect} does not bring this complaint about.`,
  clearedBy: (suspect: string, reading: number) => `Reading ${reading} speaks against it: it cleared ${suspect}.`,
  clearedByWorks: (suspect: string) => `What works speaks against it: that cleared ${suspect}.`,
  verdict: (suspect: string, share: string) => `Verdict filed: ${suspect}, ${share} when it was filed.`,
  done: (done: string) => `Done: ${done}`,
} as const;
