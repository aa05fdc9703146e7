import type { HelpPage } from "./page.ts";

/** Help to look things up in. */
export const REFERENCE_HELP = {
  before: {
    title: "Before you probe",
    also: "safety, cautions, airbag, high voltage, fuse, battery, hot, danger",
    blocks: [
      "The vehicle maker’s procedure, local codes and licensed practice come first. Wirefathom never touches a vehicle: it computes from what you drew, and a drawing can be wrong.",
      [
        "Airbags and belt tensioners, often in yellow sleeves: do not probe, not even with a meter.",
        "Orange cables, anything above 60 V DC, and mains wiring as in campers are out of scope: licensed people only.",
        "Battery: negative off first and on last, with eye protection. It gives off gas that burns.",
        "Before a cranking test: engine start disabled, brake on, in neutral or park.",
        "Hands and tools clear of everything that a switch, a jumper or a lamp can move.",
        "A load lamp gets hot. No lamp and no jumper on a control module’s pin that cannot carry it.",
        "A jumper has a fuse of its own, no larger than the circuit’s.",
        "Replace a fuse like for like. If it blows again, find the short first.",
        "Back-probe from the wire side. Do not pierce insulation.",
      ],
      "A step that moves something, loads a pin or works at the battery carries its own caution. Read it before you throw the switch.",
    ],
  },
  states: {
    title: "Lines and signs: what a wire is",
    also: "powered, grounded, floating, between, clash, undecided, colour, legend, key",
    blocks: [
      "A wire end is one of eight things. Line, sign and word say the same; colour only helps. The insulation colour is always a code beside the wire.",
    ],
  },
  symbols: {
    title: "Symbols of parts",
    also: "fuse, relay, switch, motor, lamp, ground, diode, connector",
    blocks: ["As this program draws them, at rest. The look, IEC or North American, is a setting."],
  },
  glossary: {
    title: "Words",
    also: "glossary, dictionary, meaning, terms",
    blocks: [
      {
        terms: [
          ["access group", "a cover, trim or panel that comes off first; once off, all behind it is cheap to reach"],
          [
            "act",
            "a test that is no plain reading: a load fed by a fused jumper, a relay swapped for its like, a look, a listen",
          ],
          ["always fed", "a wire that no switch can take the feed from"],
          ["backfeed", "current that comes into a branch from its far end, often after a ground was lost"],
          ["cavity", "one numbered place of a connector; its face is drawn as seen from the wire side"],
          ["checklist", "the probe order on paper, with a field for each reading"],
          ["complaint", "the function check that fails"],
          ["condition", "what differs from rest: switches thrown, plugs apart, fuses out, engine running"],
          ["continuity chart", "which terminals of a switch are joined in each position"],
          ["designator", "the short name of a part on the drawing, as K1 or S5"],
          ["drop", "volts lost along a wire or contact while current flows; measured with the load on"],
          ["drop budget", "how many volts each leg of a branch may lose"],
          ["floating", "joined to neither feed nor ground; a meter shows 0 V there as on a ground"],
          ["function check", "what a load should do in one condition"],
          ["ghost volts", "volts that a meter shows through a very high resistance; a lamp shows none"],
          ["ground point", "where wires are bolted to body or engine"],
          ["job", "one vehicle and complaint: what works, what was read, the verdict"],
          ["load", "the part that does the work: motor, lamp, heater, solenoid, horn"],
          ["loose end", "what the drawing still waits for"],
          ["net", "all terminals joined by wires and splices"],
          ["page link", "a wire that goes on under the same name on another page"],
          ["probe order", "the test points in the order to probe them"],
          ["reading", "a value read: instrument, two leads, switches, number or word"],
          ["rest", "how everything stands with nobody touching it and the key off"],
          ["scene", "a condition with a caption, kept to come back to"],
          ["sneak path", "a way for current that nobody meant"],
          ["splice", "where wires are joined for good"],
          ["source ohms", "how hard a point holds its volts; a lamp pulls a weak one down"],
          ["suspect", "a fault that may be the one, with how likely it is"],
          ["sweep", "one place read in every position of a switch"],
          ["test point", "a place a probe can reach"],
          ["throw", "to change the position of a switch"],
        ],
      },
    ],
  },
  files: {
    title: "Files, and where things are kept",
    also: "format, json, wirefathom, backup, copy, folder, export, import, privacy",
    blocks: [
      "Everything lies on this computer, in one library. Nothing is sent anywhere. About says in which folder.",
      {
        terms: [
          ["*.circuit.json", "a circuit, as text that other programs can read"],
          ["*.wirefathom", "a circuit with its printed pages and photos"],
          ["*.job.json", "a job: what works, readings, verdict"],
          ["*.exercise.json", "an exercise; its fault is sealed with a passphrase"],
          ["*.handin.json", "what a learner did on an exercise, step by step"],
          ["*.html", "a take-home page that works by itself"],
          ["*.report.txt", "the report of a fault of the program, in the folder reports; at most 20 are kept"],
        ],
      },
      [
        "Copies of the library are made each day and before an upgrade, and lie in the folder copies.",
        "To move to another computer, close the program and take the whole folder along.",
        "For a copy of one circuit, {save-file} writes it as a file.",
      ],
    ],
  },
  trouble: {
    title: "When something goes wrong",
    also: "crash, error, report, library damaged, slow, undo, restore, fault of its own",
    blocks: [
      {
        terms: [
          [
            "You did something by mistake",
            "{undo} takes it back, step by step, over a restart too. Older versions stand under Circuit.",
          ],
          ["A circuit is gone", "Look at the foot of the library: deleted ones can be brought back for 30 days."],
          [
            "“Met a fault of its own”",
            "What you changed is kept. Read the report; it holds nothing of your circuits and goes nowhere by itself. Load the page again.",
          ],
          [
            "The window does not answer",
            "Wait, or have it loaded again when asked. Everything until a second ago is in the library.",
          ],
          [
            "The library was damaged",
            "The newest good copy was brought back and the damaged file kept aside; a note says what may be missing.",
          ],
          [
            "“The library is in use”",
            "The program runs already, perhaps in another window. One at a time has the library.",
          ],
          ["The program was ended in a browser", "Start it again. The address it prints works once."],
          ["A file is refused", "The sentence says where in the file and why. Nothing is half loaded."],
          [
            "What it shows is not what you measure",
            "Check the drawing first, then type the reading in: the suspects follow the vehicle, not the drawing.",
          ],
        ],
      },
    ],
  },
} as const satisfies Readonly<Record<string, HelpPage>>;
