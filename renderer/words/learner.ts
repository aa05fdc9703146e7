/** What the window says to a learner at work on an exercise. */
export const LEARNER_WORDS = {
  exercise: "That exercise",
  notOpened: (name: string) => `${name} was not opened.`,
  notDone: "Not done.",
  notKept: "Not kept.",
  notSaved: "Not saved.",
  notRemoved: "Not deleted.",
  notRestarted: "Not begun again.",
  notRestored: "Not brought back.",
  bringBack: "Bring it back",
  removed: (title: string) => ({
    title: `${title} is deleted.`,
    words: "What was done on it can be brought back for 30 days.",
  }),

  cameBack: (acts: string) => ({
    title: "This exercise was deleted.",
    words: `What was done on it before is back with it: ${acts}.`,
  }),

  exercises: "Exercises",
  deletedExercises: "Deleted exercises",
  notBegun: "Nothing done yet",
  verdictFiled: "Verdict filed",

  asDrawn: "As drawn: what the wires carry is for you to find",
  keys: "Home goes to the first point, arrow keys walk along the circuit, Page Down goes to the next part. Enter opens what can be done there, and what it costs.",
  begin: "Click anything on the drawing to see what can be done there, and what it costs.",
  hint: (price: string) => `Hint, ${price}`,
  noHints: "no hint left",
  nothingHere: "Nothing that is allowed here can be done on it.",
  behindTrim: (acts: readonly string[]) => `Cannot be reached yet; once that is done: ${acts.join("; ")}.`,
  asking: "Being done",
  heldBack: (acts: readonly string[]) => `Left out: ${acts.join("; ")}.`,
  blackHere: "Lay the black lead here",
  blackBack: "Black lead back to battery\u00a0−",
  blackLies: (place: string) => `The black lead is on ${place}.`,

  seen: "What you see and hear",
  notThrown: "Nothing was switched yet.",
  nothingWorks: "As it is switched now, nothing moves, lights or sounds.",
  functions: "Functions to try",
  trim: "Trim and covers",
  after: (before: readonly string[]) => `with ${before.join(", ")} first`,
  standing: "As it stands",
  allowed: "What may be used",
  type: "Type what you do",
  typedExample: "type what you do: probe X5-6",
  orClick: "Or click on the drawing. Several settings at once: probe X5-6 @ S1=on",
  enter: "Enter does it.",

  nothingDone: "Nothing done yet",
  howToBegin: "Throw a switch, or click a part or a point of the drawing; every act is noted here with its minutes.",
  otherVehicle: "From here on the vehicle is no longer as it was complained of: what is read proves nothing.",

  whatIsWrong: "What is wrong",
  howItFails: "How it fails",
  proof: "Readings that prove it",
  noReadings: "None was taken.",
  noneTicked: "Tick those that prove it; with none ticked all of them count.",
  nameFirst: "Name a part, a wire or a pin first.",
  file: "File the verdict",
  fileIt: "Yes, file it",
  fileSure: "The verdict ends this exercise, and cannot be changed.",
  filed: "The verdict is filed. Whether it is right, your instructor says.",

  again: "Begin again",
  againSure: "Yes, begin again",
  againAbout: "What was done on it goes; save your hand-in first if you want to keep it.",

  handIn: "Hand in",
  yourName: "Your name",
  nameWanted: "Say your name first: your instructor gathers many.",
  save: "Save your hand-in",
  handInAbout: "The file holds everything you did, with times and readings. Give it to your instructor.",
  handInOpen: "Without a verdict it says only how far you came.",
} as const;

/** The time of day of a moment, as the person's clock has it: "14:05". */
export function clockText(moment: string): string {
  const at = new Date(moment);
  return Number.isNaN(at.getTime()) ? "" : at.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}

/** What a hand-in's file is called: the learner first, since an instructor gathers many. */
export function handinSaved(learner: string, title: string): string {
  return [learner, title].filter((word) => word.trim() !== "").join(", ");
}
