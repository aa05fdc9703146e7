import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { build, isBuilt } from "../../electron/build.ts";
import { ROOT } from "./sample.ts";

/** What is run of the built program: pages, scripts and styles, of every host and of take-home pages. */
const RUN = /\.(?:c?js|mjs|html|css|svg)$/;
/** Names of formats that look like addresses; nobody goes there. */
const NAMESPACES = ["ns.adobe.com", "purl.org", "www.aiim.org", "www.eclipse.org", "www.w3.org", "www.xfa.org"];
/** Places where a fault of a package, a licence or a remark says more is to be read. */
const TO_READ = [
  "bugs.webkit.org",
  "developer.mozilla.org",
  "en.wikipedia.org",
  "github.com",
  "konvajs.org",
  "react.dev",
  "reactjs.org",
  "rolldown.rs",
  "scripts.sil.org",
  "tools.ietf.org",
  "words.filippo.io",
  "www.apache.org",
  "www.freetype.org",
  "www.microsoft.com",
  "www.postgresql.org",
  "www.typescriptlang.org",
];
/** Examples by which a package tries whether an address can be read at all. */
const EXAMPLES = ["exa", "example.com", "foo.bar"];
const HERE = ["127.0.0.1", "localhost"];
/** A call or an element that would go to an address written right there. */
const GOES_THERE =
  /(?:\bfetch|\bWebSocket|\bEventSource|sendBeacon|\bimport|importScripts|\bWorker|\.open|\burl|\brequire)\(\s*["'`]?(?:https?|wss?):|\b(?:src|href|action)=["'](?:https?:)?\/\//g;

function files(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? files(path) : RUN.test(entry.name) ? [path] : [];
  });
}

/** Hosts of the addresses in a text; a place that is filled in when it runs is none. */
function hostsIn(text: string): readonly string[] {
  return [...text.matchAll(/\b(?:https?|wss?):\/\/([\w.-]*\w)/gi)].map(([, host]) => host!);
}

describe("what is built", () => {
  beforeAll(async () => {
    if (!isBuilt(ROOT)) await build(ROOT);
  }, 120_000);
  const built = () => ["electron", "renderer", "takehome"].flatMap((name) => files(join(ROOT, "out", name)));

  it("names no place of the network but those that were looked at", () => {
    const known = [...NAMESPACES, ...TO_READ, ...EXAMPLES, ...HERE];
    const named = built().flatMap((file) => hostsIn(readFileSync(file, "utf8")).map((host) => [host, file] as const));
    expect(named.length).toBeGreaterThan(50);
    expect(named.filter(([host]) => !known.includes(host))).toEqual([]);
  });

  it("goes to none of them", () => {
    const going = built().flatMap((file) => readFileSync(file, "utf8").match(GOES_THERE) ?? []);
    // The one that asks a program which runs already, on this machine, stands behind a place that is filled in.
    expect(going.filter((text) => !text.startsWith("fetch(`http:"))).toEqual([]);
    expect(hostsIn('fetch("https://count.example/a")')).toEqual(["count.example"]);
    for (const text of [
      'fetch("https://a',
      "new WebSocket('wss://a",
      '<script src="//a',
      'import("https://a',
      "url(https://a",
    ]) {
      expect(text.match(GOES_THERE), text).not.toBeNull();
    }
  });

  it("brings the styles of the wall into the window of the class alone: in the program they would come over its own", () => {
    const page = join(ROOT, "out", "renderer");
    const styles = [...readFileSync(join(page, "class.html"), "utf8").matchAll(/[\w-]+\.css/g)].map(([name]) => name);
    expect(styles.length).toBeGreaterThan(0);
    const asks = files(page).filter((path) => !path.endsWith("class.html") && !path.endsWith(".css"));
    for (const path of asks) for (const name of styles) expect(readFileSync(path, "utf8"), path).not.toContain(name);
  });
});
