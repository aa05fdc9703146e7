import { describe, expect, it } from "vitest";
import { hashOfBytes } from "../../electron/store/pictureFile.ts";
import { keptPicture, sweepPictures } from "../../electron/store/sqlite/pictures.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, type TestHost, value } from "./library.ts";
import { jpegHead, png, pngHeadOnly } from "./pictureFiles.ts";
import { sample } from "./sample.ts";
import { showing } from "./showing.ts";

const DAY_MS = 86_400_000;
const later = (days: number): Date => new Date(MORNING.getTime() + days * DAY_MS);
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");

const put = (host: TestHost, bytes: Uint8Array) => got(host, "pictures.put", { bytes: base64(bytes) });

describe("a picture in the library", () => {
  it("is told by its own head, and comes back byte for byte after a restart", async () => {
    const folder = ownFolder();
    const first = hostOn(folder);
    const bytes = png(30, 20);
    const picture = await put(first, bytes);
    expect(picture).toEqual({ sha256: hashOfBytes(bytes), mime: "image/png", widthPx: 30, heightPx: 20 });
    await first.keeper.close();
    const kept = await got(hostOn(folder), "pictures.get", { sha256: picture.sha256 });
    expect(kept).toEqual({ mime: "image/png", bytes: base64(bytes) });
  });

  it("is kept once, however often it is brought in", async () => {
    const host = hostOn(ownFolder());
    await put(host, png(30, 20));
    await put(host, png(30, 20));
    const { connection } = value(await host.keeper.store());
    expect(connection.prepare("SELECT count(*) FROM pictures").pluck().get()).toBe(1);
  });

  it.each([
    ["nothing", Buffer.alloc(0), "picture-empty"],
    ["a PDF", Buffer.from("%PDF-1.7"), "picture-kind"],
    ["an SVG", Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'/>"), "picture-kind"],
    ["100 million pixels", pngHeadOnly(10_000, 10_000), "picture-pixels"],
    ["a photograph that lies on its side", jpegHead(40, 30, 6), "picture-turned"],
    ["a long strip", jpegHead(60_000, 10), "picture-side"],
    ["a JPEG that is cut off", jpegHead(40, 30).subarray(0, 30), "picture-damaged"],
  ])("%s is refused", async (_, bytes, expected) =>
    expect(code(await ask(hostOn(ownFolder()), "pictures.put", { bytes: base64(bytes) }))).toBe(expected),
  );

  it("is not asked for but by its hash, nor brought in but as base64", async () => {
    const host = hostOn(ownFolder());
    expect(code(await ask(host, "pictures.get", { sha256: "../../etc/passwd" }))).toBe("call-argument");
    expect(code(await ask(host, "pictures.get", { sha256: "ab".repeat(32) }))).toBe("picture-unknown");
    expect(code(await ask(host, "pictures.put", { bytes: "no base64!" }))).toBe("call-argument");
  });

  it("whose bytes changed on the disk is refused, and put right by bringing it in again", async () => {
    const host = hostOn(ownFolder());
    const { sha256 } = await put(host, png(30, 20));
    const store = value(await host.keeper.store());
    store.connection.prepare("UPDATE pictures SET bytes = ?").run(png(30, 20, 9));
    expect(code(await ask(host, "pictures.get", { sha256 }))).toBe("picture-changed");
    await put(host, png(30, 20));
    expect(keptPicture(store, sha256).ok).toBe(true);
  });
});

describe("a picture that no page shows any more", () => {
  it("stays while a version names it, and for 30 days after it was brought in", async () => {
    const host = hostOn(ownFolder());
    const [shown, never] = [await put(host, png(30, 20)), await put(host, png(31, 20))];
    const { id, version } = await got(host, "circuits.create", { circuit: showing(sample(), shown) });
    await got(host, "circuits.save", {
      id,
      version,
      circuit: showing(sample()),
      bench: "{}",
      benchVersion: 0,
      name: "Take away",
    });
    const store = value(await host.keeper.store());
    expect(sweepPictures(store, later(29))).toBe(0);
    expect(sweepPictures(store, later(31))).toBe(1);
    expect(keptPicture(store, shown.sha256).ok).toBe(true);
    expect(code(keptPicture(store, never.sha256))).toBe("picture-unknown");
  });

  it("goes once the circuit has left the bin for good", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    const shown = await put(host, png(30, 20));
    const { id } = await got(host, "circuits.create", { circuit: showing(sample(), shown) });
    await got(host, "circuits.remove", { id });
    await host.keeper.close();
    const again = hostOn(folder);
    again.setNow(later(31));
    const store = value(await again.keeper.store());
    await again.keeper.close();
    expect(store.connection.open).toBe(false);
    const last = value(await hostOn(folder).keeper.store());
    expect(code(keptPicture(last, shown.sha256))).toBe("picture-unknown");
  });

  it("is still there for a circuit that was doubled before the first one was deleted", async () => {
    const host = hostOn(ownFolder());
    const shown = await put(host, png(30, 20));
    const { id } = await got(host, "circuits.create", { circuit: showing(sample(), shown) });
    await got(host, "circuits.duplicate", { id });
    const store = value(await host.keeper.store());
    store.connection.prepare("DELETE FROM circuits WHERE id = ?").run(id);
    expect(sweepPictures(store, later(90))).toBe(0);
  });
});
