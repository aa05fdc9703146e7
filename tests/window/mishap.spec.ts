import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { openSample, positionOf, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "a fault of the program is told of with a report that the person can read, save and leave",
  { tag: "@both" },
  async ({ program }) => {
    const { page, folder, faults } = program;
    await openSample(page, "Roof vents");
    await throwTo(page, "S1", "on");
    await page.evaluate(`setTimeout(() => { throw new Error("S1 broke on purpose"); }); undefined`);
    const notice = page.getByRole("alert").filter({ hasText: "met a fault of its own" });
    await expect(notice).toContainText("What you changed is kept. Nothing was sent anywhere.");
    await notice.getByRole("button", { name: "Show the report" }).click();
    const dialog = page.getByRole("dialog", { name: "Report of a fault" });
    const text = await dialog.getByRole("textbox").inputValue();
    expect(text).toMatch(/^Wirefathom \S+ met a fault of its own/);
    expect(text).toContain("Where: in the page");
    expect(text).toContain("[left out] broke on purpose");
    expect(text).toMatch(/Done last, newest first: (hold|throw|make|let-go|pin)/);
    expect(text).toContain("parts 48");
    expect(text).not.toContain("Roof vents");
    const [kept] = readdirSync(join(folder, "reports"));
    expect(readFileSync(join(folder, "reports", kept!), "utf8")).toBe(text);
    await dialog.getByRole("button", { name: "Copy" }).click();
    await expect(dialog.getByRole("status")).toHaveText("Copied.");
    const saved = await program.saved(() => dialog.getByRole("button", { name: "Save it as a file" }).click());
    expect([saved.name, Buffer.from(saved.bytes).toString()]).toEqual(["Wirefathom report.txt", text]);
    await page.keyboard.press("Escape");
    await expect(dialog).toBeHidden();
    expect(faults.length).toBeGreaterThan(0);
    faults.length = 0;
    await program.restart();
    await expect(positionOf(program.page, "S1", "on")).toHaveAttribute("aria-pressed", "true");
  },
);
