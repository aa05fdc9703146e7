import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { CALL_NAMES } from "../../schemas/callNames.ts";
import { FRONTS, MENU_COMMANDS, MENU_WITH } from "../../schemas/calls/window.ts";
import type * as Fake from "./fakeElectron.ts";
import { ownFolder } from "./library.ts";

const PAGE = "app://wirefathom/";
let fake: typeof Fake;

beforeEach(async () => {
  vi.resetModules();
  vi.doMock("electron", () => import("./fakeElectron.ts"));
  fake = await import("./fakeElectron.ts");
});

describe("the menu", () => {
  interface Item {
    readonly label?: string;
    readonly role?: string;
    readonly accelerator?: string;
    readonly registerAccelerator?: boolean;
    readonly enabled?: boolean;
    readonly submenu?: readonly Item[];
    click?(): void;
  }
  const flat = (items: readonly Item[]): readonly Item[] =>
    items.flatMap((item) => [item, ...flat(item.submenu ?? [])]);

  it.each(["linux", "win32", "darwin"])(
    "on %s takes no key from the drawing and offers each command once",
    async (platform) => {
      const { menuTemplate } = await import("../../electron/menu.ts");
      const sent: string[] = [];
      const items = flat(
        menuTemplate(
          platform,
          (command) => sent.push(command),
          { redo: "Ctrl+G" },
          "bench",
        ) as unknown as readonly Item[],
      );
      const roles = items.flatMap(({ role }) => role ?? []);
      expect(roles.filter((role) => /zoom|reload|devtools/i.test(role))).toEqual([]);
      expect(
        items.filter(({ accelerator, registerAccelerator }) => accelerator && registerAccelerator !== false),
      ).toEqual([]);
      const keys = new Map(items.map(({ label, accelerator }) => [label, accelerator]));
      expect(keys.get("Undo")).toBe("CmdOrCtrl+Z");
      expect(keys.get("Redo")).toBe("CmdOrCtrl+G");
      expect(keys.get("Keys and commands")).toBe("Shift+F1");
      for (const item of items) item.click?.();
      expect(sent.toSorted()).toEqual([...MENU_COMMANDS].toSorted());
    },
  );
});

describe("the menu while something else is in front", () => {
  it.each(FRONTS)("offers with the %s only what does something there", async (front) => {
    const { menuTemplate } = await import("../../electron/menu.ts");
    const sent: string[] = [];
    const items = menuTemplate("linux", (command) => sent.push(command), {}, front);
    type Item = { readonly enabled?: boolean; readonly submenu?: readonly Item[]; click?(): void };
    const all = (items as unknown as readonly Item[]).flatMap(({ submenu = [] }) => submenu);
    for (const item of all) if (item.enabled) item.click?.();
    expect(sent.toSorted()).toEqual([...MENU_WITH[front]].toSorted());
  });
});

describe("the page's own scheme", () => {
  async function asked(folder: string, address: string, method = "GET"): Promise<Response> {
    const { servePages } = await import("../../electron/protocol.ts");
    servePages(folder);
    const serve = fake.record.guards.serve as unknown as (request: {
      url: string;
      method: string;
    }) => Promise<Response>;
    return serve({ url: address, method });
  }
  function pages(): string {
    const folder = ownFolder();
    mkdirSync(join(folder, "pages"));
    writeFileSync(join(folder, "pages", "index.html"), "page");
    writeFileSync(join(folder, "secret.txt"), "secret");
    return join(folder, "pages");
  }

  it("gives files with the headers of every host, and refusals with them too", async () => {
    const { HEADERS } = await import("../../electron/headers.ts");
    const folder = pages();
    const asks = [
      [PAGE, "GET", 200],
      [`${PAGE}nothing.js`, "GET", 404],
      ["app://elsewhere/", "GET", 403],
      [PAGE, "POST", 405],
    ] as const;
    for (const [address, method, status] of asks) {
      const response = await asked(folder, address, method);
      expect(response.status).toBe(status);
      expect(Object.fromEntries(response.headers)).toMatchObject(HEADERS);
    }
    expect(await (await asked(folder, PAGE)).text()).toBe("page");
  });

  it("never leaves its folder", async () => {
    const folder = pages();
    const piece = fc.constantFrom("..", "%2e%2e", "/", "%2f", "\\", "%5c", "secret.txt", ".", "%00", "index.html");
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 8 }), async (steps) => {
        const response = await asked(folder, PAGE + steps.join(""));
        expect(await response.text()).not.toBe("secret");
      }),
      { numRuns: 300 },
    );
  });
});

describe("the preload", () => {
  it("gives the page one function, for the calls there are", async () => {
    await import("../../electron/preload.ts");
    expect(Object.entries(fake.record.exposed).map(([name, api]) => [name, Object.keys(api)])).toEqual([
      ["wirefathom", ["call"]],
    ]);
    const { call } = fake.record.exposed.wirefathom as { call(...given: unknown[]): Promise<unknown> };
    fake.record.answers.invoke = '{"ok":true,"value":7}';
    for (const name of CALL_NAMES) expect(await call(name, { a: 1 })).toEqual({ ok: true, value: 7 });
    expect(fake.record.invoked).toEqual(CALL_NAMES.map((name) => ["call", name, '{"a":1}']));
    for (const name of ["erase", "__proto__", "", 7]) await expect(call(name, {})).rejects.toThrow();
    expect(fake.record.invoked).toHaveLength(CALL_NAMES.length);
  });
});
