import { expect, story } from "./story.ts";

story("the page has nothing of the machine, goes nowhere and asks nobody", { tag: "@both" }, async ({ program }) => {
  const { page, host, faults } = program;
  const inPage = (words: string): Promise<unknown> => page.evaluate(words);
  const names = "[typeof require, typeof process, typeof module, typeof Buffer]";
  expect(await inPage(names)).toEqual(Array(4).fill("undefined"));
  const bridge = "Object.keys(globalThis.wirefathom ?? {})";
  expect(await inPage(bridge)).toEqual(host === "electron" ? ["call"] : []);

  const asked = `fetch("https://example.com/").then(() => "answered", () => "refused")`;
  expect(await inPage(asked)).toBe("refused");
  const script = `new Promise((resolve) => {
    const script = document.createElement("script");
    script.textContent = "globalThis.wasRun = true";
    document.body.append(script);
    setTimeout(() => resolve(globalThis.wasRun === true), 100);
  })`;
  expect(await inPage(script)).toBe(false);
  const frame = `new Promise((resolve) => {
    const frame = document.createElement("iframe");
    frame.src = "https://example.com/";
    addEventListener("securitypolicyviolation", ({ violatedDirective }) => resolve(violatedDirective), { once: true });
    document.body.append(frame);
  })`;
  expect(await inPage(frame)).toBe("frame-src");
  // The console tells of each of these.
  expect(faults.splice(0).filter((fault) => !/Content Security Policy|ERR_/.test(fault))).toEqual([]);
});
