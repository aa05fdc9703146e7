import type { Wire } from "./circuit.ts";

/** What of a wire was seen on the vehicle otherwise than it is printed. */
export interface Difference {
  readonly what: "colour" | "from" | "to";
  /** A colour, or the point at which the end is printed; empty where none is. */
  readonly printed: string;
  /** A colour, or the point at which the end was found. */
  readonly seen: string;
}

/** In what a wire on the vehicle differs from its print, as far as it was noted; nothing where they agree. */
export function seenDifferences({ colour, from, to, seen = {} }: Wire): readonly Difference[] {
  const ends = (["from", "to"] as const).flatMap((what): readonly Difference[] => {
    const printed = what === "from" ? from : to;
    const place = seen[what];
    return place === undefined || place === placeOf(printed)
      ? []
      : [{ what, printed, seen: `${ownerOf(printed)}${place}` }];
  });
  const isOther = seen.colour !== undefined && seen.colour !== colour;
  return [...(isOther ? [{ what: "colour", printed: colour ?? "", seen: seen.colour! } as const] : []), ...ends];
}

/** The place of a point on its part or connector: `6` of X5-6, `stud` of GP2.stud. */
export function placeOf(point: string): string {
  return point.slice(ownerOf(point).length);
}

/** What a point lies on, with the sign before its place: `X5-` of X5-6. Ids have neither sign. */
export function ownerOf(point: string): string {
  return /^[^.-]*[.-]/.exec(point)?.[0] ?? "";
}
