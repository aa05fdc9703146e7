/** Sentences for instruments that cannot be clipped or read as asked. */
export const INSTRUMENT_WORDS = {
  "instrument-absent": "There is no instrument {id} on the bench.",
  "instruments-many": "The bench has room for {most} instruments.",
  "instrument-leads": "A clamp goes round a wire; it has no leads.",
  "instrument-clamp": "Only a clamp goes round a wire.",
  "instrument-amps": "This instrument has no amps to choose.",
  "instrument-shape": "What is clipped on cannot be understood.",
  "leads-together": "Both leads would be on {point}.",
  "jumper-whole": "The fuse of this jumper is whole.",
  "ohms-live":
    "{point} is live: an ohmmeter goes only on a dead circuit. Take the battery off or pull the plug that feeds it.",
  "ohms-shared":
    "{one} and {other} both lie between the leads, and it would read them together. Pull a plug to part them.",
} as const;

/** What instruments are called. */
export const BENCH_INSTRUMENTS = {
  voltmeter: "Voltmeter",
  "small-lamp": "Test lamp",
  "heavy-lamp": "Load lamp",
  ohmmeter: "Ohmmeter",
  jumper: "Jumper lead",
  "stand-in": "Stand-in load",
  clamp: "Clamp ammeter",
} as const;

type Name = keyof typeof BENCH_INSTRUMENTS;
const lower = (name: Name): string => BENCH_INSTRUMENTS[name].toLowerCase();

/** Names of edits of instruments, as they stand after "Undo". */
export const INSTRUMENT_EDITS = {
  layInstrument: (name: Name) => `take the ${lower(name)} out`,
  putInstrumentAway: (name: Name) => `put the ${lower(name)} away`,
  clipLead: (name: Name, lead: "red" | "black", place: string | null) =>
    place === null
      ? `take the ${lead} lead of the ${lower(name)} off`
      : `clip the ${lead} lead of the ${lower(name)} to ${place}`,
  clampRound: (wire: string | null) => (wire === null ? "take the clamp off" : `clamp round ${wire}`),
  changeInstrumentAmps: (name: Name, amps: number) => `give the ${lower(name)} ${amps} A`,
  renewJumper: "put a new fuse in the jumper lead",
} as const;

/** Titles of the commands on instruments by id. */
export const INSTRUMENT_TITLES = {
  "lay-instrument": "Take an instrument out",
  "put-instrument-away": "Put the instrument away",
  "clip-lead": "Clip a lead",
  "clamp-round": "Clamp round a wire",
  "change-instrument-amps": "Amps of the instrument",
  "renew-jumper": "New fuse for the jumper",
} as const;

/** What to mind with an instrument where it is clipped. */
export const INSTRUMENT_CAUTIONS = {
  doNotProbe: (point: string, reason: string) => `${point} is not to be probed: ${reason}.`,
  modulePin: (point: string) => `${point} hangs on a module's pin: only a voltmeter goes there.`,
  thinWire: (point: string) => `The wire at ${point} is thin: take the small test lamp.`,
  deadShort: "It is a dead short across the battery: take it off.",
  acrossLoad: (part: string) => `It bridges ${part}: never set a jumper across a load.`,
  bigFuse: (amps: number) => `A jumper has a fuse of ${amps} A; a bigger one can burn a wire.`,
  mayMove: "Hands and tools clear: what it feeds may move at once.",
  hot: "It gets hot: keep it off trim and insulation.",
} as const;
