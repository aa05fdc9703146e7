import type { HelpPage } from "./page.ts";

/** Help for the places where one works: benches, library, dialogs. */
export const WORK_HELP = {
  start: {
    title: "How to begin",
    also: "first steps, tutorial, new",
    blocks: [
      "Redraw the few parts that carry the fault, throw a switch, and see what every wire is. Then let the program say where to probe.",
      [
        "Open a sample and click a switch. Nothing can break: it is as it came when you open it again.",
        "Choose Probe order beside the drawing, say what fails, and read the first row.",
        "Type 0 V or 12 V there and look at Suspects.",
        "For your own vehicle begin from a printed page, or with New circuit.",
        "To learn or to teach, start a lesson: scenes, questions and hidden faults.",
      ],
      "There is no save button. Every change is kept within a second, and {undo} works after a restart too.",
    ],
  },
  library: {
    title: "Library",
    also: "jobs, circuits, deleted, bin, search, samples, exercises, lessons",
    blocks: [
      "Your jobs, exercises and circuits, the last one first, with samples and lessons beside them.",
      [
        "The search finds a vehicle, a title, a part, a wire colour or a connector in any circuit.",
        "A job is one vehicle and complaint on a circuit: opened, it stands where you left it.",
        "What is deleted can be brought back for 30 days.",
        "Open a file, or drop it anywhere on the window.",
      ],
    ],
  },
  bench: {
    title: "Bench: the drawing",
    also: "throw a switch, pan, zoom, why, follow a wire, current",
    blocks: [
      "The circuit as it is set now. Every wire says what it is by its line, its sign and its colour.",
      [
        "Throw a switch: click where its blade should lie, or a position in the strip below. A small bar marks rest.",
        "What springs back: press and hold. A short press pins it until you click again.",
        "Rest the pointer on a wire, or walk to it with the arrow keys, to read why it is so. {why} keeps that card.",
        "{find} finds a part, wire, colour, pin or place. {follow-on} and {follow-back} follow a wire over pages.",
        "The menu of a thing pulls plugs and fuses, puts faults in, and shows values and tables.",
        "“Only what changed” leaves in full what your last throw changed.",
        "Wheel or pinch zooms, drag moves. {whole-page} shows the whole page.",
      ],
    ],
  },
  draw: {
    title: "Drawing",
    also: "catalogue, wire, splice, colour, arrange, assembly, copy",
    blocks: [
      [
        "{add-part} opens the catalogue. Click or drag a part, or a ready assembly, into place. {turn} turns it, {flip} mirrors it.",
        "{wire} takes the wire: click from terminal to terminal, with corners on the way as you like. Ending on a wire makes a splice.",
        "Type a colour with two keys for each hue, as rdye, then size and length.",
        "Several wires at once: Shift and click terminals, then click where the first goes. Type their colours in a row.",
        "{arrange} arranges what is chosen, or the page, and is taken only where wires then cross and bend less.",
        "What you saw otherwise on the vehicle than printed, note on the wire: it is listed.",
      ],
    ],
  },
  editor: {
    title: "Part editor",
    also: "continuity chart, positions, plug, pins, values, reach, module",
    blocks: [
      "A double click opens a part. Values that are not known may stay empty: usual ones are taken, and said so.",
      [
        "A switch has its continuity chart: rows are positions, a bar joins terminals. Click two circles to join them, or write the chart as text.",
        "A position latches or springs back to another one.",
        "A plug is filled from a pasted pin list.",
        "A module’s outputs follow a table of when and then. What no row decides is shown undecided.",
        "Say behind which cover a part is reached, and where it must not be probed.",
      ],
    ],
  },
  job: {
    title: "Jobs and the verdict",
    also: "job, verdict, proof, prove, handover, repair",
    blocks: [
      "A job is one vehicle on this circuit: what was told, what works, what was read, the verdict, and what was done.",
      [
        "“Begin a job” over Probe order. Put it away, and take it up again from the library.",
        "“Found” asks for the readings that prove the fault before the repair, and the same after it. A repair that only masks the fault is named.",
        "The handover page says for the owner what was wrong, how it was proved and what was done.",
        "A job travels as a *.job.json file.",
      ],
    ],
  },
  print: {
    title: "Print",
    also: "PDF, paper, checklist, branch sheet, drop budget, proof run, handover",
    blocks: [
      "Every sheet can be printed or saved as PDF, in black or in colour, A4 to Tabloid.",
      [
        "In black each state still has its own line and sign.",
        "A printed checklist has a code and numbered rows. Type a whole sheet back at once: 7=11.9 8=0.1.",
        "Printed pages can lie pale under the circuit sheet.",
      ],
    ],
  },
  export: {
    title: "Export",
    also: "SVG, PNG, GIF, CSV, net list, take-home",
    blocks: [
      "Files to hand on: the drawing as SVG or PNG, all scenes as a moving GIF, the wire list as CSV, the net list as text, and the take-home page.",
      "Pictures, faults and readings do not travel in a take-home page.",
    ],
  },
  learner: {
    title: "Working on an exercise",
    also: "learner, student, hidden fault, hand-in, minutes, hint",
    blocks: [
      "One fault is hidden in this vehicle. The drawing shows the circuit as drawn, never what the wires carry: finding that is your work.",
      [
        "Click a part, wire or point for what can be done there and what it costs, or walk there and press Enter. You can type it too: probe X5-6.",
        "Every act is noted with its minutes. Trim comes off once.",
        "File a verdict with the readings that prove it, then save your hand-in and give that file to your instructor.",
      ],
    ],
  },
  handins: {
    title: "Hand-ins",
    also: "grade, class, table, route, task list, instructor",
    blocks: [
      "What learners handed in, graded: verdict, how far it is proven, minutes, wasted probes, wrong turns.",
      [
        "Open many files at once, together with the exercises, and type the passphrase.",
        "A name opens the route, which is played on the drawing with the fault in it.",
        "A file that was edited or cut off says so in its row.",
        "The table goes out as CSV or on paper. A learner can be forgotten.",
      ],
    ],
  },
} as const satisfies Readonly<Record<string, HelpPage>>;
