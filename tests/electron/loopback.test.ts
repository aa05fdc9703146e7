import { connect } from "node:net";
import { describe, expect, it } from "vitest";
import { CONTENT_SECURITY_POLICY } from "../../electron/headers.ts";
import { type Reply, send } from "./http.ts";
import { cookieOf, ownHeaders, pathOf, served } from "./served.ts";

describe("coming in", () => {
  it("works once with an address, and gives a cookie that no script and no other site gets", async () => {
    const loopback = await served();
    const path = pathOf(loopback.newAddress());
    const first = await send(loopback.port, path);
    expect({ status: first.status, location: first.headers.location }).toEqual({ status: 303, location: "/" });
    expect(first.headers["set-cookie"]).toEqual([
      expect.stringMatching(/^wirefathom-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    expect((await send(loopback.port, path)).status).toBe(403);
  });

  it("is refused without a cookie, with a made-up one, and with a made-up address", async () => {
    const loopback = await served();
    const { port } = loopback;
    expect((await send(port, "/")).status).toBe(403);
    expect((await send(port, "/assets/main-1.js")).status).toBe(403);
    expect((await send(port, "/", { headers: { cookie: `wirefathom-${port}=${"a".repeat(43)}` } })).status).toBe(403);
    expect((await send(port, "/", { headers: { cookie: `wirefathom-${port}=` } })).status).toBe(403);
    expect((await send(port, `/?t=${"a".repeat(43)}`)).status).toBe(403);
    expect((await send(port, "/?t=")).status).toBe(403);
  });

  it("with a used address leads a browser that is in already to the page, and HEAD does not use an address up", async () => {
    const loopback = await served();
    const path = pathOf(loopback.newAddress());
    expect((await send(loopback.port, path, { method: "HEAD" })).status).toBe(403);
    const headers = { cookie: (await send(loopback.port, path)).headers["set-cookie"]![0]!.split(";")[0]! };
    expect(await send(loopback.port, path, { headers })).toMatchObject({ status: 303, headers: { location: "/" } });
  });

  it("to two libraries in one browser, which sends every port all cookies, keeps both in and lets neither into the other", async () => {
    const [one, other] = [await served(), await served()];
    const cookies = [(await cookieOf(one)).cookie!, (await cookieOf(other)).cookie!];
    expect(new Set(cookies.map((cookie) => cookie.split("=")[0])).size).toBe(2);
    const headers = { cookie: cookies.join("; ") };
    expect((await send(one.port, "/", { headers })).status).toBe(200);
    expect((await send(other.port, "/", { headers })).status).toBe(200);
    expect((await send(one.port, "/", { headers: { cookie: cookies[1]! } })).status).toBe(403);
  });

  it("listens on this machine's own address only", async () => {
    const loopback = await served();
    const other = connect({ host: "::1", port: loopback.port });
    const outcome = await new Promise((resolve) =>
      other.once("error", () => resolve("refused")).once("connect", () => resolve("in")),
    );
    other.destroy();
    expect(outcome).toBe("refused");
  });
});

describe("the page", () => {
  it.each([
    ["/", "text/html; charset=utf-8"],
    ["/index.html", "text/html; charset=utf-8"],
    ["/assets/main-1.js", "text/javascript; charset=utf-8"],
  ])("%s comes as %s", async (path, type) => {
    const loopback = await served();
    const reply = await send(loopback.port, path, { headers: await cookieOf(loopback) });
    expect({ status: reply.status, type: reply.headers["content-type"] }).toEqual({ status: 200, type });
  });

  it.each([
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/%2e%2e%2fsecret.txt",
    "/assets/..%5c..%5csecret.txt",
    "/assets/%252e%252e/secret.txt",
    "/link.txt",
    "/assets/notes.md",
    "/assets",
    "/assets/",
    "/index.html%00",
    "/%ff",
    "/.hidden.txt",
    "/secret.txt",
    "/C:/secret.txt",
  ])("does not give out %s", async (path) => {
    const loopback = await served();
    const reply = await send(loopback.port, path, { headers: await cookieOf(loopback) });
    expect({ status: reply.status, isSecret: reply.body.includes("secret") }).toEqual({ status: 404, isSecret: false });
  });
});

describe("a call", () => {
  it("from the page is answered with an outcome as JSON", async () => {
    const loopback = await served();
    const headers = await ownHeaders(loopback);
    const start = await send(loopback.port, "/call/start", { method: "POST", headers, body: "{}" });
    expect({ status: start.status, type: start.headers["content-type"] }).toEqual({
      status: 200,
      type: "application/json; charset=utf-8",
    });
    expect(JSON.parse(start.body)).toMatchObject({ ok: true, value: { host: "loopback", count: 0 } });
    const unknown = await send(loopback.port, "/call/erase", { method: "POST", headers, body: "{}" });
    expect(JSON.parse(unknown.body)).toMatchObject({ ok: false, refusal: { code: "call-unknown" } });
    const broken = await send(loopback.port, "/call/start", { method: "POST", headers, body: "{" });
    expect(JSON.parse(broken.body)).toMatchObject({ ok: false, refusal: { code: "call-text" } });
  });

  it.each([
    ["another site", { origin: "https://example.com" }, 403],
    ["another port of this machine", { origin: "http://127.0.0.1:1" }, 403],
    ["the same machine by name", { origin: "http://localhost" }, 403],
    ["nowhere", { origin: "null" }, 403],
    ["a form", { "content-type": "text/plain" }, 415],
    ["a page that is not in", { cookie: "" }, 403],
  ])("from %s is refused", async (_, wrong, status) => {
    const loopback = await served();
    const headers = { ...(await ownHeaders(loopback)), ...wrong };
    expect((await send(loopback.port, "/call/start", { method: "POST", headers, body: "{}" })).status).toBe(status);
  });

  it("without an origin is refused, and so is one whose path names the origin's host", async () => {
    const loopback = await served();
    const { origin: _, ...headers } = await ownHeaders(loopback);
    expect((await send(loopback.port, "/call/start", { method: "POST", headers, body: "{}" })).status).toBe(403);
    for (const path of ["//127.0.0.1:1/call/start", "/\\127.0.0.1:1/call/start", "http://127.0.0.1:1/call/start"]) {
      const asked = { method: "POST", headers: { ...headers, origin: "http://127.0.0.1:1" }, body: "{}" };
      expect((await send(loopback.port, path, asked)).status).toBe(400);
    }
  });

  it.each(["localhost", "127.0.0.1", "127.0.0.1:1", "wirefathom.example", "[::1]"])(
    "to the name %s is refused before anything else",
    async (name) => {
      const loopback = await served();
      const headers = { ...(await ownHeaders(loopback)), host: name };
      expect((await send(loopback.port, "/call/start", { method: "POST", headers, body: "{}" })).status).toBe(421);
      expect((await send(loopback.port, "/", { headers })).status).toBe(421);
    },
  );

  it("larger than the limit is refused, told beforehand or not", async () => {
    const loopback = await served({ mostBytes: 1_000 });
    const headers = await ownHeaders(loopback);
    const body = JSON.stringify({ text: "a".repeat(2_000) });
    for (const told of [{ "content-length": String(body.length) }, { "transfer-encoding": "chunked" }]) {
      const asked = { method: "POST", headers: { ...headers, ...told }, body };
      expect((await send(loopback.port, "/call/circuits.import", asked)).status).toBe(413);
    }
    expect((await send(loopback.port, "/call/start", { method: "POST", headers, body: "{}" })).status).toBe(200);
  });

  it("that does not arrive in time is cut off", async () => {
    const loopback = await served({ requestMs: 200 });
    const headers = await ownHeaders(loopback);
    const slow = connect({ host: "127.0.0.1", port: loopback.port });
    const lines = Object.entries({ host: `127.0.0.1:${loopback.port}`, ...headers, "content-length": "50" });
    slow.write(`POST /call/start HTTP/1.1\r\n${lines.map(([name, text]) => `${name}: ${text}\r\n`).join("")}\r\n{`);
    let said = "";
    slow.on("data", (piece) => {
      said += piece;
    });
    await new Promise((resolve) => slow.once("close", resolve));
    expect(said).toMatch(/^HTTP\/1\.1 (408|413) /);
    expect(said).toContain(`content-security-policy: ${CONTENT_SECURITY_POLICY}\r\n`);
  });

  it("that only waits ends when its page goes", async () => {
    const loopback = await served();
    const headers = await ownHeaders(loopback);
    const gone = new AbortController();
    const waiting = fetch(`http://127.0.0.1:${loopback.port}/call/nextRequest`, {
      method: "POST",
      headers,
      body: "{}",
      signal: gone.signal,
    });
    setTimeout(() => gone.abort(), 100);
    await expect(waiting).rejects.toThrow();
    // Were it still waiting, closing at the end of this test would take 25 seconds.
  });
});

describe("every response", () => {
  it("has the policy and the other headers, refusals too", async () => {
    const loopback = await served({ mostBytes: 10 });
    const { port } = loopback;
    const own = await ownHeaders(loopback);
    const post = { method: "POST", headers: own, body: "{}" };
    const replies: readonly Reply[] = [
      await send(port, "/"),
      await send(port, pathOf(loopback.newAddress())),
      await send(port, "/", { headers: own }),
      await send(port, "/nothing.js", { headers: own }),
      await send(port, "/", { headers: { ...own, host: "example.com" } }),
      await send(port, "//twice"),
      await send(port, "/", { method: "PUT", headers: own }),
      await send(port, "/", { method: "OPTIONS", headers: own }),
      await send(port, "/call/start", post),
      await send(port, "/call/erase", post),
      await send(port, "/call/start", { ...post, body: "a".repeat(20) }),
      await send(port, "/call/start", { ...post, headers: { ...own, origin: "null" } }),
      await send(port, "/call", post),
      await send(port, "/again", { ...post, body: "1" }),
    ];
    expect(replies.map(({ status }) => status)).toEqual([
      403, 303, 200, 404, 421, 400, 405, 405, 200, 200, 413, 403, 404, 403,
    ]);
    for (const { headers } of replies) {
      expect(headers).toMatchObject({
        "content-security-policy": CONTENT_SECURITY_POLICY,
        "cross-origin-opener-policy": "same-origin",
        "cross-origin-embedder-policy": "require-corp",
        "cross-origin-resource-policy": "same-origin",
        "x-content-type-options": "nosniff",
        "referrer-policy": "no-referrer",
        "cache-control": "no-store",
      });
      expect(Object.keys(headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
    }
  });

  it.each([
    ["names no host", () => "GET / HTTP/1.1\r\n\r\n", 421],
    ["is of an old form", () => "GET / HTTP/1.0\r\n\r\n", 421],
    ["expects something", (host: string) => `GET / HTTP/1.1\r\n${host}Expect: tea\r\n\r\n`, 417],
    [
      "wants another protocol",
      (host: string) => `GET / HTTP/1.1\r\n${host}Connection: upgrade\r\nUpgrade: a\r\n\r\n`,
      403,
    ],
    ["is no HTTP", () => "hello\r\n\r\n", 400],
    ["has a head without end", (host: string) => `GET /${"a".repeat(20_000)} HTTP/1.1\r\n${host}\r\n`, 400],
  ])("has them where a request %s", async (_, text, status) => {
    const { port } = await served();
    const socket = connect({ host: "127.0.0.1", port });
    socket.end(text(`Host: 127.0.0.1:${port}\r\n`));
    let said = "";
    for await (const piece of socket) said += piece;
    expect(said).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
    expect(said.toLowerCase()).toContain(`content-security-policy: ${CONTENT_SECURITY_POLICY}\r\n`);
  });

  it("allows no script or style in line, nothing evaluated and no other host", () => {
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*|https?:/);
    expect(CONTENT_SECURITY_POLICY).toMatch(/^default-src 'none';/);
  });

  it("is bounded in number", async () => {
    const loopback = await served({ strangers: 5 });
    const sockets = Array.from({ length: 40 }, () => connect({ host: "127.0.0.1", port: loopback.port }));
    const closed = await Promise.all(
      sockets.map(
        (socket) =>
          new Promise<boolean>((resolve) => {
            socket.on("error", () => resolve(true)).on("close", () => resolve(true));
            setTimeout(() => resolve(false), 500);
          }),
      ),
    );
    for (const socket of sockets) socket.destroy();
    expect(closed.filter((isClosed) => !isClosed).length).toBeLessThanOrEqual(5);
  });
});
