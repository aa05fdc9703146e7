import { openSample } from "./acts.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story("a name and a vehicle that were typed once are not asked for again", async ({ program }) => {
  const { page, folder } = program;
  await page.getByRole("button", { name: "Settings and keys" }).click();
  await page.getByRole("textbox", { name: "Your name" }).fill("Ann Lee");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Settings and keys" })).toBeFocused();
  await page.waitForTimeout(500);
  await program.restart();
  await program.page.getByRole("button", { name: "Settings and keys" }).click();
  await expect(program.page.getByRole("textbox", { name: "Your name" })).toHaveValue("Ann Lee");
  await program.page.keyboard.press("Escape");

  // Both stand in the head of what is printed for the job.
  await openSample(program.page, "Horn");
  await openView(program.page, "Probe order");
  await program.page.getByRole("button", { name: "Begin a job" }).click();
  await program.page.getByRole("textbox", { name: "Vehicle", exact: true }).fill("B-AD 1234");
  await program.page.getByRole("textbox", { name: "Vehicle", exact: true }).press("Enter");
  await program.page.getByRole("button", { name: "Low horn sounds" }).click();
  await expect(program.page.locator(".reading-field input")).toBeVisible();
  await program.page.keyboard.press("Control+p");
  const print = program.page.getByRole("dialog", { name: "Print" });
  await print.getByText("Checklist", { exact: true }).click();
  const sheet = print.locator(".print-pages svg").first();
  await expect(sheet).toContainText("Ann Lee");
  await expect(sheet).toContainText("B-AD 1234");
  const pdf = await program.saved(() => print.getByRole("button", { name: "Save as PDF" }).click());
  expect(pdf.bytes.subarray(0, 5).toString()).toBe("%PDF-");
  await program.page.keyboard.press("Escape");
  await program.page.getByRole("button", { name: "back to the library" }).click();

  // A hand-in offers the name; whoever else sits there types theirs over it.
  const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open");
  await program.chooses(file, () => program.page.keyboard.press("Control+o"));
  await program.page.locator(".learner-head").waitFor();
  await program.page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Verdict" }).click();
  const name = program.page.getByRole("textbox", { name: "Your name" });
  await expect(name).toHaveValue("Ann Lee");
  const saved = await program.saved(() => program.page.getByRole("button", { name: "Save your hand-in" }).click());
  expect(saved.name).toMatch(/^Ann Lee, /);
});
