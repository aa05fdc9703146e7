import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { circle, filledBox, line, terminalRing, text } from "../drawing/shapes.ts";
import type { Row } from "./contactArms.ts";
import { busDistance, type ContactLayout, layOut, type PlacedArm, type RowNet } from "./contactLayout.ts";
import { type ContactGroup, contactGroups } from "./contacts.ts";
import type { PartView, Pose, Side, SymbolShape } from "./kind.ts";
import { type Operator, operatorMarks } from "./operator.ts";

/** How far the tip of an open make contact stands off at the left, and how far an open blade stops short of its ring. */
const OPEN_ASIDE: GridUnits = 1.5;
const OPEN_SHORT: GridUnits = 0.4;
const OPERATOR_ROOM: GridUnits = 2;
/** Two feet this far apart leave room for the name between them. */
const NAME_GAP: GridUnits = 8;
const NAME_ROOM: GridUnits = 1.4;
const LETTER_WIDTH: GridUnits = 0.5;

/**
 * The symbol of any continuity table: poles at the foot and throws at the top, neighbours sharing a throw over a small
 * bus, make contacts otherwise, and a dashed link through the blades of one control. One contact alone stands bare; all
 * else has a body. Terminals keep the row where their contacts are.
 */
export function switchSymbol(view: PartView, pose: Pose, operator: Operator): SymbolShape {
  const groups = contactGroups(view);
  const isPanel = groups.length > 1;
  const isBare = !isPanel && groups[0]?.contacts.length === 1 && view.terminals.length === 2;
  const hasSign = !isPanel && groups.length > 0 && (isBare || operator !== "hand");
  const left = 2 + (hasSign ? OPERATOR_ROOM : 0);
  const first = layOut(groups, view.terminals, { left, under: 0, labels: isPanel });
  const gap = isPanel || isBare ? null : nameGap(first);
  const layout = gap === null ? first : layOut(groups, view.terminals, { left, under: NAME_ROOM, labels: false });
  const { width, height, footY } = layout;
  const body = isBare ? [] : [bodyBox(width, height)];
  const sign = hasSign ? operatorMarks(operator, 1.2, bladeMiddle(layout), linkEnd(layout, pose)) : [];
  return {
    width,
    height,
    terminals: terminalSpots(layout),
    marks: [...body, ...sign, ...contactMarks(layout, pose, isPanel)],
    nameAt:
      gap !== null && isShort(view, gap.width)
        ? { x: gap.middle, y: footY + 2.25, anchor: "middle" }
        : { x: width + 0.6, y: isPanel ? 2 : height / 2 - 0.2, anchor: "start" },
  };
}

/** Whether the name has room in the gap; the outline is the same either way, so that a new label moves no terminal. */
function isShort(view: PartView, room: GridUnits): boolean {
  const hasShortNames = view.terminals.every((terminal) => terminal.length <= 4);
  return hasShortNames && (view.part.label ?? "").length * LETTER_WIDTH < room - 1;
}

/** The faint box round a part with more than one contact. */
export function bodyBox(width: GridUnits, height: GridUnits): Mark {
  return filledBox("body", 0, 0, width, height, 0.8);
}

/** A wide gap between two neighbouring feet, where nothing lies below the link. */
function nameGap({ rows }: ContactLayout): { readonly middle: GridUnits; readonly width: GridUnits } | null {
  if (rows.foot.some(({ level }) => level !== null)) return null;
  const feet = rows.foot.flatMap(({ rings }) => rings).sort((one, other) => one - other);
  const at = feet.findIndex((x, index) => index + 1 < feet.length && feet[index + 1]! - x >= NAME_GAP);
  return at < 0 ? null : { middle: (feet[at]! + feet[at + 1]!) / 2, width: feet[at + 1]! - feet[at]! };
}

/** Where the terminals leave the outline, top row and foot row. */
export function terminalSpots({
  rows,
  height,
}: ContactLayout): Readonly<Record<string, Spot & { readonly side: Side }>> {
  const spots: Record<string, Spot & { side: Side }> = {};
  for (const { terminal, stands } of rows.top) if (stands !== null) spots[terminal] = { x: stands, y: 0, side: "up" };
  for (const { terminal, stands } of rows.foot) {
    if (stands !== null) spots[terminal] = { x: stands, y: height, side: "down" };
  }
  return spots;
}

/** Height of the middle of the blades, where the link runs. */
export function bladeMiddle({ topY, footY }: ContactLayout): GridUnits {
  return (topY + footY) / 2;
}

/** The x where a link from the left meets the first blade as it lies now. */
export function linkEnd(layout: ContactLayout, pose: Pose): GridUnits {
  const arms = layout.groups.flatMap((group) => group.arms);
  return arms.length === 0 ? 0 : Math.min(...arms.map((arm) => middleX(layout, arm, pose)));
}

/** Leads, buses, blades as they lie now with a ghost at rest, links, rings and names of a field of contacts. */
export function contactMarks(layout: ContactLayout, pose: Pose, labels: boolean): readonly Mark[] {
  const { groups, rows, labelY } = layout;
  const arms = groups.flatMap((group) => group.arms);
  const named = labels ? groups.map(({ label, labelX }) => text(label, labelX, labelY)) : [];
  return [
    ...rows.top.flatMap((net) => netMarks(layout, net, "top")),
    ...rows.foot.flatMap((net) => netMarks(layout, net, "foot")),
    ...riserMarks(layout),
    ...groups.flatMap((group) => linkMarks(layout, group.arms, pose)),
    ...arms.flatMap((arm) => bladeMarks(layout, arm, pose)),
    ...ringMarks(layout),
    ...named,
  ];
}

function busY(layout: ContactLayout, row: Row, level: number): GridUnits {
  return row === "top" ? layout.topY - busDistance(level) : layout.footY + busDistance(level);
}

/** The leads of one terminal in one row, with a dot wherever three meet. */
function netMarks(layout: ContactLayout, net: RowNet, row: Row): readonly Mark[] {
  const { rings, stands, riser, level } = net;
  const ringY = row === "top" ? layout.topY : layout.footY;
  const outline = row === "top" ? 0 : layout.height;
  const name = stands === null ? [] : [nameMark(net.terminal, stands, row === "top" ? 1.45 : layout.nameY)];
  if (level === null) return [...(stands === null ? [] : [line("symbol", stands, outline, stands, ringY)]), ...name];
  const y = busY(layout, row, level);
  const at = [...rings, ...(stands === null ? [] : [stands]), ...(riser === null ? [] : [riser])];
  const from = Math.min(...at);
  const to = Math.max(...at);
  const meeting = (x: GridUnits): number =>
    Number(x > from) + Number(x < to) + Number(rings.includes(x)) + Number(x === stands) + Number(x === riser);
  return [
    line("symbol", from, y, to, y),
    ...rings.map((x) => line("symbol", x, ringY, x, y)),
    ...(stands === null ? [] : [line("symbol", stands, outline, stands, y)]),
    ...[...new Set(at)].filter((x) => meeting(x) > 2).map((x) => circle("joint", x, y, 0.32, true)),
    ...name,
  ];
}

function nameMark(terminal: string, x: GridUnits, y: GridUnits): Mark {
  return text(terminal, x + 0.45, y, { role: "text-quiet" });
}

/** Leads between the rows, from bus to bus. */
function riserMarks(layout: ContactLayout): readonly Mark[] {
  return layout.rows.top.flatMap(({ terminal, riser, level }) => {
    const below = layout.rows.foot.find((net) => net.terminal === terminal);
    if (riser === null || level === null || !below || below.level === null) return [];
    return [line("symbol", riser, busY(layout, "top", level), riser, busY(layout, "foot", below.level))];
  });
}

function linkMarks(layout: ContactLayout, arms: readonly PlacedArm[], pose: Pose): readonly Mark[] {
  if (arms.length < 2) return [];
  const at = arms.map((arm) => middleX(layout, arm, pose));
  return [line("link", Math.min(...at), bladeMiddle(layout), Math.max(...at), bladeMiddle(layout))];
}

function middleX(layout: ContactLayout, arm: PlacedArm, pose: Pose): GridUnits {
  const tip = tips(layout, arm, pose.closed)[0]!;
  const share = (layout.footY - bladeMiddle(layout)) / (layout.footY - tip.y);
  return arm.footX + (tip.x - arm.footX) * share;
}

/** Where the blade ends: at each ring it closes, or in the open. */
function tips(
  { topY }: ContactLayout,
  { throws, footX, rest }: PlacedArm,
  closed: ReadonlySet<string>,
): readonly Spot[] {
  const joined = throws.filter(({ key }) => closed.has(key)).map(({ x }) => ({ x, y: topY }));
  if (joined.length > 0) return joined;
  if (throws.length === 1) return [{ x: footX - OPEN_ASIDE, y: topY + OPEN_SHORT }];
  const isUpright = rest === null && throws.every(({ x }) => Math.abs(x - footX) > 1);
  return [{ x: isUpright ? footX : (throws[0]!.x + throws[1]!.x) / 2, y: topY + OPEN_SHORT }];
}

function bladeMarks(layout: ContactLayout, arm: PlacedArm, pose: Pose): readonly Mark[] {
  const now = tips(layout, arm, pose.closed);
  const isNow = (spot: Spot): boolean => now.some(({ x, y }) => x === spot.x && y === spot.y);
  const ghosts = tips(layout, arm, pose.rest).filter((spot) => !isNow(spot));
  return [
    ...ghosts.map(({ x, y }) => line("contact-rest", arm.footX, layout.footY, x, y)),
    ...now.map(({ x, y }) => line("contact-now", arm.footX, layout.footY, x, y)),
  ];
}

function ringMarks({ rows, topY, footY }: ContactLayout): readonly Mark[] {
  return [
    ...rows.top.flatMap(({ rings }) => rings.map((x) => terminalRing(x, topY))),
    ...rows.foot.flatMap(({ rings }) => rings.map((x) => terminalRing(x, footY))),
  ];
}

/** The field of contacts of a part whose continuity the circuit does not write, such as a relay; `feet` stand at the foot. */
export function layOutContacts(
  groups: readonly ContactGroup[],
  terminals: readonly string[],
  feet: readonly string[],
): ContactLayout {
  return layOut(groups, terminals, { left: 2, under: 0, labels: false, feet });
}
