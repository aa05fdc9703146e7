import type { ControlKey } from "../../core/base/ids.ts";
import { byClaim, type Claim, type InHand } from "./stripControls.ts";

/** Which controls stand in the strip, and what that was worked out for. */
export interface StripRow {
  readonly shown: readonly ControlKey[];
  readonly page: string;
  readonly room: number;
  readonly widths: ReadonlyMap<ControlKey, number>;
  /** Thrown or wanted, but without a place here. */
  readonly waiting: readonly ControlKey[];
}

/** What the strip has to be laid out in, pixels of the strip itself. */
export interface StripRoom {
  readonly room: number;
  /** Width of every control. */
  readonly widths: ReadonlyMap<ControlKey, number>;
  /** Between two controls. */
  readonly gap: number;
  /** Kept free for "More" where not all fit. */
  readonly more: number;
}

/**
 * The controls that stand in the strip. Those that stood there stay, so that a throw moves nothing away under a hand, until
 * one without a place is thrown or wanted, or page, circuit or room change. Gives back `before` itself while nothing does.
 */
export function stripRow(before: StripRow | null, hand: Omit<InHand, "standing">, room: StripRoom): StripRow {
  const { page } = hand;
  const isSameRoom = before?.room === room.room && before.widths === room.widths;
  if (before && isSameRoom && before.page === page && isSame(waiting(hand, before.shown), before.waiting))
    return before;
  const standing = before?.page === page ? before.shown : [];
  const shown = fitting(byClaim({ ...hand, standing }), room);
  return { shown, page, room: room.room, widths: room.widths, waiting: waiting(hand, shown) };
}

/** Those that fit. A narrow one may take what a wide one had no room in, but a far one not before all others. */
function fitting(claims: readonly Claim[], { room, widths, gap, more }: StripRoom): readonly ControlKey[] {
  const taken = (key: ControlKey): number => (widths.get(key) ?? 0) + gap;
  const keys = claims.map(({ key }) => key);
  const all = keys.reduce((sum, key) => sum + taken(key), -gap);
  if (all <= room + 0.5) return keys;
  const shown: ControlKey[] = [];
  let left = room - more;
  let isFull = false;
  for (const { key, isFar } of claims) {
    if (taken(key) > left + 0.5 || (isFar && isFull)) isFull = true;
    else {
      shown.push(key);
      left -= taken(key);
    }
  }
  return shown;
}

function waiting({ condition, wanted }: Omit<InHand, "standing">, shown: readonly ControlKey[]): readonly ControlKey[] {
  const asking = new Set([...Object.keys(condition.set ?? {}), ...wanted]);
  return [...asking].filter((key) => !shown.includes(key)).sort();
}

function isSame(one: readonly ControlKey[], other: readonly ControlKey[]): boolean {
  return one.length === other.length && one.every((key, index) => key === other[index]);
}
