/** Words of a fault that comes and goes: the sheet, how things are moved, and what is refused. */
export const WIGGLE_WORDS = {
  title: "Wiggle sheet",
  columns: ["Row", "Place", "Move it", "Min", "Max", "When"],
  move: {
    plug: "Push, pull and twist the plug; then pull gently at each wire behind it.",
    splice: "Bend the harness on both sides of the splice.",
    ground: "Press and twist the ring, tap the bolt.",
    run: "Bend and pull along the run, at clips and edges first.",
    relay: "Tap the relay, rock it in its socket.",
    fuse: "Rock the fuse in its blades.",
    control: "Work it ten times, then press it sideways.",
    part: "Tap the body, rock its plug.",
  },
  hot: "Warm it with a hair dryer, no hotter than a hand bears.",
  wet: "Mist it with water; keep off mains and airbag wiring.",
  bumps: "Knock beside it with the ball of the hand.",
  run: (from: string, to: string, wires: string) => `Run ${from} to ${to}: ${wires}`,
  watch: (red: string, black: string, range: string) =>
    `Clip the meter on: red ${red}, black ${black}; good is ${range}. Let it keep min and max, and reset them before each row.`,
  watchLoad: (load: string) => `Watch ${load} itself: no probe goes to its terminals.`,
  swing: "Beyond the good range while one place moves: that place is it. Move it again to be sure.",
  movesIt: (place: string) => `It comes and goes with ${place}: move it once more, then look into it.`,
  still: "Nothing that was moved has brought it on yet.",
  clear: (motors: string) => `Hands and tools clear of ${motors} and all it moves.`,
  guesses: "How likely a place is, hot, wet and bumps with it, is a guess.",
} as const;

/** Sentences for what was read while something was moved and cannot be taken as typed. */
export const WIGGLE_REFUSALS = {
  "wiggle-spelling": "{text} is no lowest and highest; write 2.1..11.8, or 2.1..11.8 when bumped.",
  "wiggle-order": "{low} to {high}: write the lowest first.",
  "wiggle-high": "{typed} V cannot be read on a {nominal} V circuit; look at the meter's range.",
  "wiggle-place": "{place} is no place of the wiggle sheet; it has {places}.",
  "wiggle-when": "{text} is none of {words}.",
  "wiggle-shape": "What was read while moving cannot be understood.",
  "wiggle-sometimes": "A wiggle sheet is for what fails sometimes: note the complaint as sometimes.",
} as const;
