/** A jumper lead that is to be checked. */
export interface JumperLead {
  /** Points as they are typed, `K1.30`, `X5-6`, `battery +`; "" where none is named yet. */
  readonly from: string;
  readonly to: string;
  /** Rating of the lead's own fuse; null for a bare lead. */
  readonly fuseAmps: number | null;
  /** The end that the next pin chosen on the drawing is taken for; null for none. */
  readonly picking: "from" | "to" | null;
}

/** Before anything was typed: a lead with the fuse of an ordinary jumper. */
export const NO_JUMPER: JumperLead = { from: "", to: "", fuseAmps: 5, picking: null };

/** The jumper once a pin was chosen on the drawing: it is taken for the end that is being picked, then the other end is. */
export function pickedFor(jumper: JumperLead, pin: string): JumperLead {
  const { picking } = jumper;
  if (picking === null) return jumper;
  const taken = { ...jumper, [picking]: pin };
  return { ...taken, picking: picking === "from" && taken.to === "" ? "to" : null };
}
