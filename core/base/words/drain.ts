/** Sentences for a battery that goes flat with the key off. */
export const DRAIN_WORDS = {
  label: "The battery goes flat",
  complaint: (milliamps: string) => `The battery goes flat: more than ${milliamps} mA with the key off`,
  asleep: (minutes: string) =>
    `Let the vehicle sleep before the first row: key out, everything switched off, about ${minutes} minutes (a guess; some take longer).`,
  open: "Open what must be opened beforehand and close the door latch by hand: a door that opens wakes modules.",
  beforehand: (labels: string, minutes: string) =>
    `Lay the fuses open while you wait, ${minutes} min that the rows no longer count: ${labels}.`,
  leaveIn: "Pull no fuse: that wakes or restarts modules. Read millivolts across it where it sits.",
  battery: "Charge and test the battery by itself too: an old one goes flat with nothing connected.",
  drawn: (milliamps: string) =>
    `The drawing itself takes ${milliamps} mA with everything at rest: look what is left on before you probe.`,
  parted: "Parting a plug can wake modules: wait until the millivolts are still, then read.",
  stops: (thing: string) => `Watch the millivolts while ${thing} is parted: what they fall by went that way.`,
  scale: (milliamps: string) => `1 mV across this fuse is ${milliamps} mA`,
} as const;
