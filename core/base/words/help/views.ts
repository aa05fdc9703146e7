import type { HelpPage } from "./page.ts";

/** Help for the views beside the drawing, under the names of the views. */
export const VIEW_HELP = {
  order: {
    title: "Probe order",
    also: "where to probe first, checklist, complaint, drain, intermittent",
    blocks: [
      "The test points of this circuit in the order that finds the fault in the fewest minutes.",
      [
        "Choose what fails at the top. Under What works tick what you have tried: everything shared with what works is cleared.",
        "Each row says where to put both leads, how to set the switches, what a good circuit reads there, and why it is worth the minutes.",
        "Type what you read in the field of the open row: 11.9, 0.02, dim, ok, or one value for each position. What it will do stands below the field before you press Enter.",
        "The order is worked out anew after each reading. You may take any other row first; it says what that costs.",
      ],
      "Weights and minutes are guesses until you say better. Where the battery goes flat, or something fails only sometimes, say so in place of “dead”: the order is another one then.",
      "Print it as a checklist, or as a branch sheet that says after each reading where to go on.",
    ],
  },
  suspects: {
    title: "Suspects",
    also: "likely faults, probability, cleared, verdict, found, prove",
    blocks: [
      "What may be wrong, how likely each is now, and what it was before your last reading. The living ones add up to 100 %.",
      [
        "Press a suspect: the drawing shows every wire as it would be with it. {wrong} shows the good circuit again.",
        "Below the first stands what would part it from the second.",
        "Cleared suspects are listed with the reading that cleared them.",
        "Open one to say that it fails more often here, on this circuit or in this shop, and where you have that from.",
      ],
      "When one is left, do not order the part yet: “Found” lists the readings that prove it before and after the repair.",
    ],
  },
  readings: {
    title: "Readings",
    also: "what was measured, doubt, strike out, contradiction",
    blocks: [
      "Everything you read, in order, with leads, switches and value.",
      [
        "Doubt a reading, strike it out, or read it again. Suspects and order follow.",
        "Two readings that cannot both be right are named. Read one of them again before you go on.",
        "On the drawing each reading stands as a dark flag on its point.",
      ],
    ],
  },
  works: {
    title: "What works",
    also: "function checks, complaint, tried, dead, weak",
    blocks: [
      "What each load should do, and what it does on this vehicle. It costs minutes and no tools, and clears most of the circuit.",
      [
        "Say for each check whether it works, is dead or weak, works only sometimes, or was not tried.",
        "A check that fails can be made the complaint.",
        "Add a check of a load as the circuit is set now. A circuit without checks has no probe order.",
      ],
    ],
  },
  branch: {
    title: "Straight branch",
    also: "one load alone, feed to ground, drop budget, volts lost",
    blocks: [
      "One load with all that feeds it and all that grounds it, from the battery down in one line, with whatever controls it beside.",
      [
        "Choose the load at the top. Press a row to find it on the drawing.",
        "Printed as a drop budget it says how many volts each leg may lose, and has a field for what you read. Measure drops with the load switched on.",
      ],
    ],
  },
  instruments: {
    title: "Instruments",
    also: "meter, test lamp, jumper, load, min max, clip",
    blocks: [
      "Meters and lamps clipped onto the drawing. They show what they would show on the vehicle.",
      [
        "Take one, then press a pin, a stud or a wire for each lead, or type the place.",
        "Leads stay on while you throw switches. Lowest and highest are kept; {begin-traces} begins them anew.",
        "A voltmeter changes nothing. A lamp, a jumper or a load does change the circuit, as on the vehicle.",
        "An ohmmeter goes only on what is dead.",
      ],
      "On the vehicle: a load lamp gets hot, and no lamp or jumper goes on a control module’s pin that cannot carry it.",
    ],
  },
  shares: {
    title: "Shared paths",
    also: "backfeed, sneak path, what else hangs on, jumper",
    blocks: [
      "What else hangs on a fuse, splice, ground, connector, pin or wire, and what dies with it.",
      [
        "Sneak paths: every way in which current can run against the drawn direction, with nothing or one place open. A lost ground is often found here.",
        "Jumper: name two points, typed or picked on the drawing, and see what would flow, what would melt and what would run, before you do it.",
      ],
    ],
  },
  faults: {
    title: "Faults",
    also: "plant a fault, open, short, corroded, comes and goes",
    blocks: [
      "Faults put into the drawing, to see what they do. They change nothing about the circuit itself.",
      [
        "Put one in from the menu of a part, wire or pin ({fault}), or choose it here.",
        "“Nothing wrong” at the top right shows the good circuit again ({wrong}).",
        "A fault that comes and goes is stopped and stepped here.",
      ],
    ],
  },
  cupboard: {
    title: "Fault cupboard",
    also: "instructor, exercise, hide a fault, difficulty, seal, passphrase",
    blocks: [
      "Every fault this circuit can have, for an instructor: by place, or behind one complaint by difficulty.",
      [
        "Try one on the drawing and take it out again, or have one drawn: the same seed draws the same fault.",
        "“Make an exercise” seals it into a file for learners. You say what they are told, what they may use, and what hints cost.",
        "The passphrase is kept nowhere. Forgotten, it cannot be had back.",
      ],
    ],
  },
  table: {
    title: "Position table",
    also: "plug, connector, pins, expected readings, continuity",
    blocks: [
      "What each pin of a plug reads in each position of its switches: plugged in and unplugged, with a meter and with a test lamp.",
      [
        "Choose the connector, or all of them.",
        "0.0 V at a pin is not proof of a ground: a floating wire reads the same. The lamp tells them apart.",
        "Save it as CSV, or print it.",
      ],
    ],
  },
  condition: {
    title: "Condition",
    also: "scenes, plugs apart, fuses out, battery off, engine, take-home page",
    blocks: [
      "All that differs from rest: switches thrown, plugs apart, fuses out, battery off, module outputs driven, engine running.",
      [
        "Each can be put back here. {rest} puts all back to rest.",
        "Keep a condition as a scene, with a caption and questions for a class.",
        "“Take-home page” makes one file of HTML with switches and scenes that works on any phone without a network.",
      ],
    ],
  },
  class: {
    title: "Class",
    also: "second screen, projector, predict, question, cover, presenter",
    blocks: [
      "What a class sees, on a second screen or over this one: one branch in focus, large words, the state said in words.",
      [
        "{class} opens it. Arrow keys step the scenes, space plays them, B blanks the screen, Escape leaves.",
        "Cover the states up and ask first. Count hands for each answer, then show it with the reason.",
        "Your notes and the faults you put in stay in your own window.",
        "In a browser draw the class window to the other screen yourself.",
      ],
    ],
  },
  list: {
    title: "List",
    also: "screen reader, words, parts, wires, accessible",
    blocks: [
      "Every part and wire of the page in words, with its state, volts and amps. Nothing on the drawing is told by colour alone, and nothing needs a mouse.",
      ["Press a row to choose it on the drawing.", "It can be read by a screen reader, and follows every throw."],
    ],
  },
  circuit: {
    title: "Circuit",
    also: "pages, versions, cautions, access groups, trim, minutes, photo, loose ends",
    blocks: [
      "What belongs to the circuit as a whole: title and vehicle, pages, cautions, places behind trim, and every earlier version.",
      [
        "An access group is a cover or panel that comes off first. Say its minutes, and give it a photo: the probe order counts with it.",
        "Every version that was kept can be brought back, as one step to undo.",
        "Two pages become one drawing by the menu of a page.",
      ],
      "Loose ends, in the line at the foot, are what the drawing still waits for: terminals without a wire, wires without a colour, links without their other half. A click goes there.",
    ],
  },
  printed: {
    title: "Printed pages",
    also: "PDF, scan, photograph, underlay, redraw, square, crop",
    blocks: [
      "The maker’s schematic under your drawing, so that you can redraw it in place.",
      [
        "Bring in a PDF, a scan or a photograph: choose the file, drop it on the drawing, or paste a picture there.",
        "Make it as strong or faint as you like. White paper leaves only what is printed.",
        "A photograph taken at an angle is made square: put the four handles on the corners of the paper.",
        "Tie a part or wire to the print under it, to be shown later where it is printed.",
      ],
      "Printed pages stay in your library on this computer. Mind whose they are before you hand a file on.",
    ],
  },
} as const satisfies Readonly<Record<string, HelpPage>>;
