/**
 * How likely each sort of fault is before anything is read, relative to the others. No published rates exist for
 * vehicle parts; what is published is an order: connections before parts, opens before shorts, resistors fail open
 * (Kuphaldt, "Lessons in Electric Circuits", volume V, likely failures). The numbers are guesses in that order.
 */
export const WEIGHTS = {
  wrongPosition: 6,
  fuseBlown: 5,
  lampBurnt: 8,
  pinCorroded: 4,
  pinBackedOut: 3,
  plugLoose: 2,
  plugWet: 0.5,
  groundCorroded: 4,
  groundOff: 2,
  contactBurnt: 3,
  contactPoor: 2,
  contactStuck: 1,
  relayCoil: 2,
  relayWelded: 1,
  motorOpen: 3,
  motorWorn: 3,
  motorSeized: 3,
  mechanismJammed: 3,
  loadOpen: 3,
  loadShorted: 0.5,
  wireOpen: 1.5,
  wirePoor: 1,
  wireShorted: 0.6,
  wireCrossed: 0.1,
  spliceLeg: 1.5,
  batteryFlat: 4,
  batteryPoor: 1,
  diodeOpen: 1,
  diodeShorted: 1,
  moduleOutput: 1,
  senderFault: 2,
} as const;
