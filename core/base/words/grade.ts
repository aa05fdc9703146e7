/** Words of the table that an instructor reads of a class. */
export const GRADE_WORDS = {
  heads: [
    "Learner",
    "Exercise",
    "Result",
    "Verdict",
    "Other suspects, %",
    "Missing reading",
    "Minutes",
    "Minutes of the probe order",
    "Readings",
    "Moves that told nothing",
    "First wrong turn",
    "Hints",
    "Remark",
  ],
  result: {
    right: "right",
    wrong: "wrong",
    alike: "wrong, but nothing allowed tells the two apart",
    open: "no verdict",
  },
  proof: { proven: "proven", "as far as can be": "proven as far as it can be", "not proven": "not proven" },
  right: (proof: string) => `right, ${proof}`,
  missing: (row: string, other: string) => `${row}: tells it from ${other}`,
  turn: (move: number, dearer: string, better: string | null) =>
    `move ${move}, ${dearer} min dearer${better === null ? "" : `; better: ${better}`}`,
  /** The class's table on paper. */
  sheet: {
    title: "Hand-ins of a class",
    columns: ["Learner", "Result", "Minutes", "Readings", "First wrong turn, remark"],
    facts: (handins: number, graded: number) =>
      `${handins === 1 ? "1 hand-in" : `${handins} hand-ins`}, ${graded} of them graded`,
    course: "Class, instructor, date",
    others: (share: string, missing: string) => `Others ${share}; missing: ${missing}`,
    minutes: (minutes: string) => `${minutes} min`,
    ofMinutes: (minutes: string) => `of ${minutes} min`,
    hints: (hints: number) => (hints === 1 ? "1 hint" : `${hints} hints`),
    told: (moves: string) => `told nothing: move ${moves}`,
    tasks: "Task list",
    taskColumns: ["Learner", "Done", "Tried"],
    none: "none",
    hint: "Minutes are those of the exercise; after them what the probe order needs.",
  },
  progress: { done: "done", tried: "tried", none: "" },
} as const;

/** Sentences for a task list that cannot be read. */
export const GRADE_REFUSALS = {
  "grade-exercise": "Say which exercise was handed in: --exercise FILE.",
  "tasks-line": "Line {number} of the task list is no task; write TASK: EXERCISE; EXERCISE.",
  "tasks-none": "The task list is empty.",
} as const;
