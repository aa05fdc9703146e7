import type { Evidence } from "./evidence.ts";
import { probeText, type Reading } from "./reading.ts";
import type { Clash } from "./step.ts";

/** A reading fits a suspect from this share of its best on. */
const FITS = 0.01;

/** Numbers of the readings that count, from 0: of several of one probe the last. */
function countedOf(readings: readonly Reading[]): readonly number[] {
  const last = new Map<string, number>();
  readings.forEach((reading, index) => {
    if (reading.standing === "taken") last.set(probeText(reading), index);
  });
  return [...last.values()].sort((one, other) => one - other);
}

/** Suspects by number that every reading fits which counts. */
export function explaining({ fits, shares }: Evidence, readings: readonly Reading[]): readonly number[] {
  const counted = countedOf(readings);
  return [...shares.keys()].filter((suspect) => counted.every((number) => fits[number]![suspect]! >= FITS));
}

/**
 * Readings that cannot all be right with one fault of this drawing: pairs that no suspect explains together; where no two
 * alone are to blame, those that must be wrong for the rest to be right. Of several readings of one probe the last
 * counts. Numbers count from 1; none where all go together.
 */
export function clashesOf({ fits }: Evidence, readings: readonly Reading[]): readonly Clash[] {
  const taken = countedOf(readings);
  const explains = (numbers: readonly number[]): boolean => {
    const suspects = fits[0]?.length ?? 0;
    for (let suspect = 0; suspect < suspects; suspect++)
      if (numbers.every((number) => fits[number]![suspect]! >= FITS)) return true;
    return false;
  };
  if (taken.length === 0 || explains(taken)) return [];
  const alone = taken.filter((number) => !explains([number]));
  if (alone.length > 0) return alone.map((number) => [number + 1]);
  const pairs = taken.flatMap((one, index) =>
    taken.slice(index + 1).flatMap((other) => (explains([one, other]) ? [] : [[one + 1, other + 1]])),
  );
  if (pairs.length > 0) return pairs;
  return taken.filter((number) => explains(taken.filter((other) => other !== number))).map((number) => [number + 1]);
}
