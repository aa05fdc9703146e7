import type { Lots } from "../lots.ts";
import type { Door, Input } from "./door.ts";

/** Text that has undone programs: names that objects have anyhow, signs that turn or end writing, figures that are none. */
const NASTY = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "",
  " ",
  "\u0000",
  "\u202eevil\u2066",
  "\ud800",
  "\udc00x",
  "\ufeff",
  "\u2028",
  "\u001b[2J",
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "{{7*7}}",
  "=HYPERLINK(1)",
  "../../etc/passwd",
  "%00%2e%2e/",
  "NaN",
  "-0",
  "1e999",
  "0x10",
  "9007199254740993",
  "99999999999999999999",
  "a".repeat(5_000),
  "\u0301".repeat(300),
  "\u{1f600}",
  "\r\n",
  "';--",
] as const;
/** JSON as it is written, put where a value stood. */
const RAW = [
  "1e999",
  "-1e999",
  "-0",
  "1e-400",
  "NaN",
  "Infinity",
  "0123",
  "null",
  "true",
  "{}",
  "[]",
  '""',
  "[[[]]]",
  '{"__proto__":{"a":1}}',
  '{"a":1,"a":2}',
];
const NUMBERS = [0, -1, 1, 0.5, -0.0001, 2 ** 31, 2 ** 32, 2 ** 53, -(2 ** 53), 1e300, 5e-324, 65_536, 255];
const MOST_SIGNS = 300_000;
const MOST_WRITTEN = 20 * MOST_SIGNS;

/** A spoilt input, made of one that the door is known for. The same lots give the same. */
export function mutated(door: Door, seeds: readonly Input[], lots: Lots): Input {
  if (door.make && lots.happens(0.9)) return door.make(lots, seeds);
  const seed = lots.oneOf(seeds);
  if (door.kind === "bytes" || typeof seed !== "string") return spoiltBytes(bytesOf(seed), seeds, lots);
  if (door.kind === "json" && lots.happens(0.75)) return spoiltJson(seed, lots);
  return spoiltText(seed, seeds, lots);
}

/** The bytes of an input. */
export function bytesOf(input: Input): Uint8Array {
  return typeof input === "string" ? Buffer.from(input) : input;
}

/** Times that one input is spoilt: mostly once or twice, seldom often. */
function times(lots: Lots): number {
  return 1 + Math.floor(lots.spread(1, 12)) - 1 || 1;
}

function spoiltBytes(bytes: Uint8Array, seeds: readonly Input[], lots: Lots): Uint8Array {
  let now: Buffer = Buffer.from(bytes);
  for (let time = times(lots); time > 0; time--) now = spoiltOnce(now, seeds, lots);
  return now;
}

function spoiltOnce(bytes: Buffer, seeds: readonly Input[], lots: Lots): Buffer {
  const at = lots.upTo(bytes.length + 1);
  const length = 1 + lots.upTo(lots.happens(0.5) ? 4 : Math.min(4_000, bytes.length + 1));
  const put = (piece: Uint8Array, over = 0): Buffer =>
    Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at + over)]);
  switch (lots.upTo(8)) {
    case 0: {
      const copy = Buffer.from(bytes);
      if (at < copy.length) copy[at] = copy[at]! ^ (1 << lots.upTo(8));
      return copy;
    }
    case 1:
      return put(Buffer.from([lots.upTo(256)]), 1);
    case 2: {
      // A number as heads and directories have it, too large or nought.
      const size = lots.oneOf([2, 4]);
      const number = Buffer.alloc(size, lots.oneOf([0, 0xff, 0x7f, 0x80]));
      return put(number, size);
    }
    case 3:
      return bytes.subarray(0, at);
    case 4:
      return put(Buffer.alloc(0), length);
    case 5:
      return put(bytes.subarray(at, at + length));
    case 6: {
      const other = bytesOf(lots.oneOf(seeds));
      const from = lots.upTo(other.length + 1);
      return put(other.subarray(from, from + length), lots.happens(0.5) ? length : 0);
    }
    default:
      return put(Buffer.from(lots.oneOf(NASTY)), lots.upTo(3));
  }
}

/** Plain text with pieces of it gone, doubled, or exchanged for nasty ones. */
export function spoiltText(text: string, seeds: readonly Input[], lots: Lots): string {
  let now = text;
  for (let time = times(lots); time > 0; time--) {
    const at = lots.upTo(now.length + 1);
    const length = 1 + lots.upTo(Math.min(40, now.length + 1));
    const other = String(lots.oneOf(seeds));
    const from = lots.upTo(other.length + 1);
    const piece = [
      "",
      lots.oneOf(NASTY),
      String(lots.oneOf(NUMBERS)),
      String.fromCharCode(lots.upTo(lots.happens(0.7) ? 128 : 65_536)),
      now.slice(at, at + length).repeat(1 + lots.upTo(lots.happens(0.05) ? 2_000 : 4)),
      other.slice(from, from + length),
    ][lots.upTo(6)]!;
    now = now.slice(0, at) + piece + now.slice(lots.happens(0.5) ? at : at + length);
  }
  return now.slice(0, MOST_SIGNS);
}

const MARK = "\ue000raw:";

/** The same JSON with values, names and places changed; what cannot be JSON any more is written in as it stands. */
export function spoiltJson(text: string, lots: Lots): string {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return text;
  }
  // A value of the same sort from elsewhere in it leaves a file in which every line is right and the whole may be wrong.
  const leaves = lots.happens(0.5) ? leavesOf(json) : [];
  for (let time = times(lots); time > 0; time--) {
    const next = changedSomewhere(json, lots, leaves);
    if (isWritten(next, MOST_WRITTEN)) json = next;
  }
  const written = JSON.stringify(json) ?? "";
  return written.replace(new RegExp(`"${MARK}(\\d+)"`, "g"), (_, index) => RAW[Number(index)]!).slice(0, MOST_WRITTEN);
}

/** Whether a value is no more than about so many signs of JSON: lists in lists that are made longer again and again are no text any more. */
function isWritten(value: unknown, most: number): boolean {
  const waiting = [value];
  for (let signs = 0; waiting.length > 0; signs++) {
    const next = waiting.pop();
    if (typeof next === "string") signs += next.length;
    else if (typeof next === "object" && next !== null) {
      const inside = Object.values(next);
      signs += Array.isArray(next) ? 0 : Object.keys(next).join().length;
      if (signs + waiting.length + inside.length > most) return false;
      for (const each of inside) waiting.push(each);
    }
    if (signs > most) return false;
  }
  return true;
}

/** The value with one place in it changed: going down from the outermost, stopping somewhere. */
function changedSomewhere(value: unknown, lots: Lots, leaves: readonly unknown[]): unknown {
  const isNested = typeof value === "object" && value !== null;
  const names = isNested ? Object.keys(value) : [];
  if (names.length === 0 || lots.happens(leaves.length > 0 ? 0.03 : 0.15)) return changed(value, lots, leaves);
  const name = lots.oneOf(names);
  if (Array.isArray(value))
    return value.toSpliced(Number(name), 1, changedSomewhere(value[Number(name)], lots, leaves));
  return { ...(value as object), [name]: changedSomewhere((value as Record<string, unknown>)[name], lots, leaves) };
}

function leavesOf(value: unknown): readonly unknown[] {
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(leavesOf) : [value];
}

function changed(value: unknown, lots: Lots, leaves: readonly unknown[]): unknown {
  if (leaves.length > 0 && (typeof value !== "object" || value === null)) {
    const other = lots.oneOf(leaves);
    if (typeof other === typeof value && lots.happens(0.8)) return other;
    if (typeof value === "number") return value + lots.oneOf([-1, 1, 0.5, 1e-9, 100]);
    if (typeof value === "string")
      return lots.oneOf([`${value} `, value.slice(1), value + lots.oneOf(NASTY).slice(0, 20)]);
  }
  if (Array.isArray(value) && lots.happens(0.7)) return changedList(value, lots);
  if (typeof value === "object" && value !== null && lots.happens(0.7))
    return changedObject(value as Record<string, unknown>, lots);
  switch (lots.upTo(7)) {
    case 0:
      return lots.oneOf(NUMBERS);
    case 1:
      return lots.oneOf(NASTY);
    case 2:
      return MARK + lots.upTo(RAW.length);
    case 3:
      return nested(value, 1 + Math.floor(lots.spread(1, 3_000)));
    case 4:
      return [value, value];
    case 5:
      return typeof value === "number"
        ? -value * lots.oneOf([1, 10, 1e9, 0.001])
        : `${JSON.stringify(value)}${lots.oneOf(NASTY)}`;
    default:
      return null;
  }
}

function changedList(list: readonly unknown[], lots: Lots): unknown {
  const at = lots.upTo(list.length);
  switch (lots.upTo(5)) {
    case 0:
      return list.toSpliced(at, 1);
    case 1:
      return [...list, list[at]];
    case 2:
      return Array.from(
        { length: Math.min(20_000, list.length * lots.oneOf([2, 50])) },
        (_, index) => list[index % list.length],
      );
    case 3:
      return list.toReversed();
    default:
      return [];
  }
}

function changedObject(object: Readonly<Record<string, unknown>>, lots: Lots): unknown {
  const names = Object.keys(object);
  const name = lots.oneOf(names.length > 0 ? names : [""]);
  const { [name]: taken, ...others } = object;
  switch (lots.upTo(4)) {
    case 0:
      return others;
    case 1:
      return Object.defineProperty({ ...others }, lots.oneOf(NASTY), { value: taken, enumerable: true });
    case 2:
      return { ...object, [lots.oneOf(NASTY)]: taken, [`${name}2`]: taken };
    default:
      return { ...object, [name]: lots.oneOf(Object.values(object)) };
  }
}

function nested(value: unknown, depth: number): unknown {
  let now = value;
  for (let level = 0; level < depth; level++) now = level % 2 === 0 ? [now] : { a: now };
  return now;
}
