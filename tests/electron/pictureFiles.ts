import { crc32, deflateSync } from "node:zlib";

/** A PNG of one grey, so many pixels wide and high: ISO/IEC 15948 with 8 bits a pixel. */
export function png(width: number, height: number, grey = 200): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const row = Buffer.alloc(width + 1, grey);
  row[0] = 0;
  const rows = deflateSync(Buffer.concat(Array.from({ length: height }, () => row)));
  return Buffer.concat([
    Buffer.from("\u0089PNG\r\n\u001a\n", "latin1"),
    chunk("IHDR", head),
    chunk("IDAT", rows),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** A PNG that says it is so large and holds nothing. */
export function pngHeadOnly(width: number, height: number): Buffer {
  const file = png(1, 1);
  file.writeUInt32BE(width, 16);
  file.writeUInt32BE(height, 20);
  return file;
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** The head of a JPEG of this size: an Exif segment with an orientation where one is given, then a frame header. */
export function jpegHead(width: number, height: number, orientation?: number, isLittle = false): Buffer {
  const exif = orientation === undefined ? [] : [exifSegment(orientation, isLittle)];
  const frame = Buffer.from([0xff, 0xc0, 0, 17, 8, 0, 0, 0, 0, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1]);
  frame.writeUInt16BE(height, 5);
  frame.writeUInt16BE(width, 7);
  const tables = Buffer.concat([Buffer.from([0xff, 0xdb, 0, 67]), Buffer.alloc(65, 1)]);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), ...exif, tables, frame]);
}

function exifSegment(orientation: number, isLittle: boolean): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write(isLittle ? "II" : "MM", 0, "latin1");
  const put16 = (value: number, at: number) =>
    isLittle ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at);
  const put32 = (value: number, at: number) =>
    isLittle ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at);
  put16(42, 2);
  put32(8, 4);
  put16(1, 8);
  put16(0x0112, 10);
  put16(3, 12);
  put32(1, 14);
  put16(orientation, 18);
  const body = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
  const length = Buffer.alloc(2);
  length.writeUInt16BE(body.length + 2);
  return Buffer.concat([Buffer.from([0xff, 0xe1]), length, body]);
}
