import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** Side of each picture of the program's icon, pixels; they are painted from `icon.svg` by `npm run icons`. */
export const ICON_SIZES = [16, 22, 24, 32, 48, 64, 128, 256, 512, 1024] as const;

const FOLDER = join("electron", "packaging", "icon");
/** The icon as it is drawn, under the project's folder. */
export const ICON_SVG = join(FOLDER, "icon.svg");

/** The file of the icon in a size, under the project's folder. */
export function iconFile(size: (typeof ICON_SIZES)[number]): string {
  return join(FOLDER, `${size}.png`);
}

type Picture = readonly [size: number, png: Buffer];

const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256] as const;
/** Names of pictures in Apple's container by what they are for: 16 and 32 pixels to be shown twice as dense have names of their own. */
const ICNS_TYPES = [
  ["ic11", 32],
  ["ic12", 64],
  ["ic07", 128],
  ["ic13", 256],
  ["ic08", 256],
  ["ic14", 512],
  ["ic09", 512],
  ["ic10", 1024],
] as const;

/** Writes the icon as Windows and macOS want it into a folder, and says where without the ending, as the packager asks for it. */
export function writeIcons(root: string, folder: string): string {
  const picture = (size: (typeof ICON_SIZES)[number]): Buffer => readFileSync(join(root, iconFile(size)));
  const place = join(folder, "icon");
  mkdirSync(dirname(place), { recursive: true });
  writeFileSync(`${place}.ico`, icoOf(ICO_SIZES.map((size) => [size, picture(size)])));
  writeFileSync(`${place}.icns`, icnsOf(ICNS_TYPES.map(([type, size]) => [type, picture(size)])));
  return place;
}

/** Pictures as one ICO: a head, a row of 16 bytes for each, then the PNG files as they are (Windows Vista and later read them). */
export function icoOf(pictures: readonly Picture[]): Buffer {
  const head = Buffer.alloc(6);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let at = head.length + 16 * pictures.length;
  const rows = pictures.map(([size, png]) => {
    const row = Buffer.alloc(16);
    // A side of 256 is written as 0.
    row.writeUInt8(size % 256, 0);
    row.writeUInt8(size % 256, 1);
    row.writeUInt16LE(1, 4);
    row.writeUInt16LE(32, 6);
    row.writeUInt32LE(png.length, 8);
    row.writeUInt32LE(at, 12);
    at += png.length;
    return row;
  });
  return Buffer.concat([head, ...rows, ...pictures.map(([, png]) => png)]);
}

/** Pictures as one ICNS: a head, then each PNG under its name of four letters, all lengths with their heads. */
export function icnsOf(pictures: readonly (readonly [type: string, png: Buffer])[]): Buffer {
  const piece = (name: string, content: Buffer): Buffer => {
    const head = Buffer.alloc(8);
    head.write(name, 0, "latin1");
    head.writeUInt32BE(content.length + head.length, 4);
    return Buffer.concat([head, content]);
  };
  return piece("icns", Buffer.concat(pictures.map(([type, png]) => piece(type, png))));
}
