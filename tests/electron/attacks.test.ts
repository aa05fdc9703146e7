import { spawn, spawnSync } from "node:child_process";
import { chmodSync, readdirSync, statSync } from "node:fs";
import { connect, type Socket } from "node:net";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import fc from "fast-check";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { REFUSED_WORDS } from "../../core/base/words/window.ts";
import { refusalsTo } from "../../electron/loopback/refusals.ts";
import { writeLock } from "../../electron/loopback/running.ts";
import { send } from "./http.ts";
import { got, hostOn, MORNING, ownFolder } from "./library.ts";
import { cookieOf, ownHeaders, pathOf, type Served, served } from "./served.ts";

/** Everything that comes back for some bytes, until the server hangs up; the sender listens to the end. */
async function said(port: number, text: string | Buffer): Promise<string> {
  const socket = connect({ host: "127.0.0.1", port });
  let all = "";
  socket.on("data", (piece) => {
    all += piece.toString("latin1");
  });
  socket.on("error", () => {});
  socket.write(text);
  // A request that was only begun is not ended by the sender.
  const isDone = setTimeout(() => socket.end(), 100);
  await new Promise((resolve) => socket.once("close", resolve));
  clearTimeout(isDone);
  return all;
}

/** Connections that are opened and closed with the test; resolves once they all are, or were hung up on. */
async function opened(port: number, count: number, first = ""): Promise<readonly Socket[]> {
  const sockets = Array.from({ length: count }, () => connect({ host: "127.0.0.1", port }));
  onTestFinished(() => {
    for (const socket of sockets) socket.destroy();
  });
  await Promise.all(
    sockets.map((socket) => {
      socket.on("error", () => {}).resume();
      if (first !== "") socket.write(first);
      return new Promise((resolve) => socket.once("connect", resolve).once("close", resolve));
    }),
  );
  return sockets;
}

/** Status of the page for the person's own browser. */
async function pageFor(loopback: Served, headers: Readonly<Record<string, string>>): Promise<number> {
  return (await send(loopback.port, "/", { headers })).status;
}

describe("many connections", () => {
  it.each([
    ["say nothing", ""],
    ["begin a head and stop", "GET / HTTP/1.1\r\nHost: 127.0.0.1"],
    [
      "begin a body and stop",
      "POST /again HTTP/1.1\r\nHost: HERE\r\nContent-Type: application/json\r\nContent-Length: 9000\r\n\r\n{",
    ],
  ])("1,000 that %s shut nobody out, and few of them stay", async (_, first) => {
    const loopback = await served();
    const own = await cookieOf(loopback);
    const sockets = await opened(loopback.port, 1_000, first.replace("HERE", `127.0.0.1:${loopback.port}`));
    expect(await pageFor(loopback, own)).toBe(200);
    expect((await send(loopback.port, pathOf(loopback.newAddress()))).status).toBe(303);
    await vi.waitFor(() => expect(sockets.filter(({ closed }) => !closed).length).toBeLessThanOrEqual(130), 60_000);
    expect(loopback.lines.join("")).toContain(REFUSED_WORDS.waited);
    expect(loopback.lines.length).toBeLessThanOrEqual(20);
  });

  it("2,000 that come back as often as they are hung up on shut nobody out", async () => {
    const loopback = await served();
    const own = await cookieOf(loopback);
    const storm = `const { connect } = require("node:net");
      const come = () => connect(${loopback.port}, "127.0.0.1").on("error", () => {}).on("close", () => setImmediate(come));
      for (let each = 0; each < 2000; each++) come();
      setTimeout(process.exit, 20000);`;
    const others = spawn(process.execPath, ["-e", storm], { stdio: "ignore" });
    onTestFinished(() => void others.kill());
    await vi.waitFor(() => expect(loopback.lines.join("")).toContain(REFUSED_WORDS.waited), 20_000);
    // Each by a connection of its own, as one that was kept would be safe.
    for (let time = 0; time < 20; time++) expect(await pageFor(loopback, own)).toBe(200);
  });

  it("never push out a connection that showed the person's cookie", async () => {
    const loopback = await served({ strangers: 3 });
    const { cookie } = await cookieOf(loopback);
    const own = connect({ host: "127.0.0.1", port: loopback.port });
    let answers = 0;
    own.on("data", (piece) => {
      answers += piece.toString("latin1").split("HTTP/1.1 200").length - 1;
    });
    const ask = (): boolean =>
      own.write(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nCookie: ${cookie}\r\n\r\n`);
    ask();
    await vi.waitFor(() => expect(answers).toBe(1));
    await opened(loopback.port, 50);
    ask();
    await vi.waitFor(() => expect(answers).toBe(2));
    own.destroy();
  });

  it.each([
    ["nothing", ""],
    ["half a head", "GET / HTTP/1.1\r\nHost: 127."],
  ])("that send %s are hung up on after a while", async (_, first) => {
    const loopback = await served({ requestMs: 200 });
    const [socket] = await opened(loopback.port, 1, first);
    if (!socket!.closed) await new Promise((resolve) => socket!.once("close", resolve));
  });

  it("with a body that nobody wants are not read to its end", async () => {
    const loopback = await served();
    const socket = connect({ host: "127.0.0.1", port: loopback.port });
    socket.on("error", () => {}).resume();
    socket.write(`POST /call/start HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nTransfer-Encoding: chunked\r\n\r\n`);
    const piece = Buffer.from(`10000\r\n${"a".repeat(0x10000)}\r\n`);
    let sent = 0;
    while (!socket.closed && sent < 1_000) {
      if (!socket.write(piece)) await Promise.race([wait(50), new Promise((go) => socket.once("drain", go))]);
      sent++;
    }
    expect(socket.bytesWritten).toBeLessThan(20_000_000);
    expect(loopback.lines.join("")).toMatch(/refused: 415 POST \/call\/start\n/);
  });
});

describe("a browser that says who asks", () => {
  it.each([
    ["cross-site", 403],
    ["same-site", 403],
    ["anything else", 403],
    ["same-origin", 200],
    ["none", 200],
  ])("%s gets %i, also with the person's cookie", async (site, status) => {
    const loopback = await served();
    expect(await pageFor(loopback, { ...(await cookieOf(loopback)), "sec-fetch-site": site })).toBe(status);
  });

  it("another page gets not even a picture or a script", async () => {
    const loopback = await served();
    const own = await cookieOf(loopback);
    for (const origin of ["null", "http://localhost:80", "http://127.0.0.1:1", "https://127.0.0.1"]) {
      expect((await send(loopback.port, "/assets/main-1.js", { headers: { ...own, origin } })).status).toBe(403);
    }
  });
});

describe("one request inside another", () => {
  const shapes: Readonly<Record<string, (head: string, inner: string) => string>> = {
    "two lengths": (head, inner) =>
      `POST /again ${head}Content-Length: 0\r\nContent-Length: ${inner.length}\r\n\r\n${inner}`,
    "a length and chunks": (head, inner) =>
      `POST /again ${head}Content-Length: ${inner.length + 5}\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n${inner}`,
    "chunks under a false name": (head, inner) =>
      `POST /again ${head}Content-Length: 5\r\nTransfer-Encoding: xchunked\r\n\r\n0\r\n\r\n${inner}`,
    "chunks twice": (head, inner) =>
      `POST /again ${head}Transfer-Encoding: chunked\r\nTransfer-Encoding: identity\r\n\r\n0\r\n\r\n${inner}`,
    "a blank before the colon": (head, inner) => `POST /again ${head}Content-Length : 0\r\n\r\n${inner}`,
    "a folded line": (head, inner) => `POST /again ${head}X: a\r\n Content-Length: 0\r\n\r\n${inner}`,
    "a length that is none": (head, inner) => `POST /again ${head}Content-Length: +0\r\n\r\n${inner}`,
    "a length below nought": (head, inner) => `POST /again ${head}Content-Length: -1\r\n\r\n${inner}`,
    "a chunk's size that is none": (head, inner) =>
      `POST /again ${head}Transfer-Encoding: chunked\r\n\r\n0x0\r\n\r\n${inner}`,
    "a bare line break": (head, inner) => `POST /again ${head}X: a\nContent-Length: 0\r\n\r\n${inner}`,
    "a nought in a head": (head, inner) => `POST /again ${head}X: a\0b\r\n\r\n${inner}`,
  };

  it.each(Object.keys(shapes))("%s: refused once, and what lies behind is never read", async (name) => {
    const loopback = await served();
    const { port, lines } = loopback;
    const { cookie } = await cookieOf(loopback);
    const head = `HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: application/json\r\n`;
    const inner = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\n\r\n`;
    const answer = await said(port, shapes[name]!(head, inner));
    expect(answer.match(/HTTP\/1\.1 \d+/g)?.length ?? 0).toBeLessThanOrEqual(1);
    expect(answer).not.toMatch(/HTTP\/1\.1 [23]/);
    await vi.waitFor(() => expect(lines).toHaveLength(1));
  });
});

describe("a request out of the ordinary", () => {
  it.each(["CONNECT", "TRACE", "OPTIONS", "PUT", "PATCH", "DELETE", "PROPFIND", "QUERY"])(
    "%s is refused",
    async (method) => {
      const loopback = await served();
      const { cookie } = await cookieOf(loopback);
      const target = method === "CONNECT" ? "example.com:443" : "/";
      const answer = await said(
        loopback.port,
        `${method} ${target} HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nCookie: ${cookie}\r\n\r\n`,
      );
      expect(answer).not.toMatch(/HTTP\/1\.1 [123]/);
      await vi.waitFor(() => expect(loopback.lines).toEqual([expect.stringContaining("refused: 405 ")]));
    },
  );

  it("for a web socket opens none, nor one that names the host twice", async () => {
    const loopback = await served();
    const { port } = loopback;
    const { cookie } = await cookieOf(loopback);
    const upgrade =
      "Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n";
    const host = `Host: 127.0.0.1:${port}\r\n`;
    const socket = await said(port, `GET /socket HTTP/1.1\r\n${host}Cookie: ${cookie}\r\n${upgrade}\r\n`);
    expect(socket).toMatch(/^HTTP\/1\.1 404 /);
    const twice = await said(port, `GET / HTTP/1.1\r\n${host}Host: example.com\r\nCookie: ${cookie}\r\n\r\n`);
    expect(twice).toMatch(/^HTTP\/1\.1 4\d\d /);
  });

  it("puts nothing of its own into the head of the answer", async () => {
    const loopback = await served();
    const headers = await cookieOf(loopback);
    for (const path of [
      "/%0d%0aset-cookie:%20a=1",
      "/?t=%0d%0aset-cookie:a=1",
      "/a%0aset-cookie:a=1?x=%0d%0a%0d%0ahello",
    ]) {
      const reply = await send(loopback.port, path, { headers });
      expect(reply.headers["set-cookie"]).toBeUndefined();
      expect(reply.body).not.toContain("hello");
    }
  });

  it("of whatever bytes gets no page, no call and no fault without a cookie", async () => {
    const { port } = await served();
    const line = fc.oneof(
      fc.constantFrom(
        `Host: 127.0.0.1:${port}`,
        "Host: localhost",
        "Content-Length: 9",
        "Transfer-Encoding: chunked",
        "Cookie: a=b",
      ),
      fc.constantFrom(
        "Content-Type: application/json",
        `Origin: http://127.0.0.1:${port}`,
        "Expect: 100-continue",
        "Upgrade: h2c",
      ),
      fc.string({ unit: "binary-ascii", maxLength: 30 }),
    );
    const target = fc.oneof(
      fc.constantFrom("/", "/index.html", "/call/start", "/again", "*", "/?t="),
      fc.string({ maxLength: 20 }),
    );
    const request = fc
      .tuple(
        fc.constantFrom("GET", "POST", "HEAD", "PUT", "get", "PRI"),
        target,
        fc.array(line, { maxLength: 6 }),
        fc.string({ maxLength: 40 }),
      )
      .map(
        ([method, path, lines, body]) =>
          `${method} ${path} HTTP/1.1\r\n${lines.map((each) => `${each}\r\n`).join("")}\r\n${body}`,
      );
    await fc.assert(
      fc.asyncProperty(fc.array(request, { minLength: 8, maxLength: 8 }), async (texts) => {
        for (const answer of await Promise.all(texts.map((text) => said(port, text))))
          expect(answer).not.toMatch(/HTTP\/1\.1 [23]/);
      }),
      { numRuns: 25 },
    );
  });
});

describe("what is told of a refusal", () => {
  it("is one line each, with time, status and path, and nothing that lets anybody in", async () => {
    const loopback = await served();
    const { port, lines } = loopback;
    const address = pathOf(loopback.newAddress());
    await send(port, address, { method: "HEAD" });
    const { cookie } = await cookieOf(loopback);
    await send(port, "/call/start", {
      method: "POST",
      headers: { cookie: cookie!, "content-type": "application/json" },
      body: "{}",
    });
    await said(port, `GET /\x1b[2J\u202eevil HTTP/1.1\r\nHost: x\r\n\r\n`);
    await said(port, "hello\r\n\r\n");
    const stamp = MORNING.toISOString().slice(0, 19);
    await vi.waitFor(() => expect(lines).toHaveLength(4));
    expect(lines.slice(0, 2)).toEqual([`${stamp} refused: 403 HEAD /\n`, `${stamp} refused: 403 POST /call/start\n`]);
    for (const line of lines) expect(line).toMatch(/^[\x20-\x7e]{1,140}\n$/);
    expect(lines.join("")).not.toContain(address.slice(4));
    expect(lines.join("")).not.toContain(cookie!.slice(-20));
  });

  it("is counted, not listed, where there is too much of it", () => {
    const lines: string[] = [];
    let at = MORNING.getTime();
    const refusals = refusalsTo(
      (line) => lines.push(line),
      () => new Date(at),
    );
    for (let time = 0; time < 5_000; time++) refusals.note(403, "GET /");
    expect(lines).toHaveLength(20);
    at += 60_000;
    refusals.note(403, `GET /${"\u202e\u0007\ud800".repeat(100)}`);
    expect(lines.slice(20)).toEqual([
      "4980 more were refused and are not listed.\n",
      expect.stringMatching(/^[\x20-\x7e]{60,140}\.\.\.\n$/),
    ]);
    for (let time = 0; time < 100; time++) refusals.note(403);
    refusals.end();
    expect(lines.at(-1)).toBe("81 more were refused and are not listed.\n");
  });
});

describe.skipIf(process.platform === "win32")("another person on this machine", () => {
  it("has neither the lock's key nor a cookie, and so gets nothing", async () => {
    const loopback = await served();
    const folder = join(ownFolder(), "library");
    // The library makes its folder.
    await hostOn(folder).keeper.store();
    await writeLock(folder, { pid: process.pid, port: loopback.port, key: loopback.key });
    expect([statSync(folder), statSync(join(folder, "running.json"))].map(({ mode }) => mode & 0o777)).toEqual([
      0o700, 0o600,
    ]);
    expect((await send(loopback.port, "/")).status).toBe(403);
    const again = { method: "POST", headers: { "content-type": "application/json" }, body: '{"key":""}' };
    expect((await send(loopback.port, "/again", again)).status).toBe(403);
    expect(await pageFor(loopback, await ownHeaders(loopback))).toBe(200);
    if (process.getuid?.() !== 0) return;
    // As somebody else, where this may be tried: even with the way to the folder open, the file is shut.
    chmodSync(join(folder, ".."), 0o755);
    const read = () => spawnSync("cat", [join(folder, "running.json")], { uid: 65_534, gid: 65_534, encoding: "utf8" });
    expect(read().stdout).toBe("");
    chmodSync(folder, 0o755);
    expect(read()).toMatchObject({ stdout: "", status: 1 });
  });

  it("reads neither library nor copies, though the folder was there before and stands open", async () => {
    const folder = ownFolder();
    chmodSync(folder, 0o755);
    const host = hostOn(folder);
    await got(host, "start", {});
    await vi.waitFor(() => expect(readdirSync(folder)).toEqual(expect.arrayContaining(["copies", "wirefathom.db"])));
    for (const name of readdirSync(folder))
      expect([name, statSync(join(folder, name)).mode & 0o077]).toEqual([name, 0]);
  });
});
