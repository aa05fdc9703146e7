import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { readCircuit } from "../../schemas/circuit.ts";
import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "a circuit goes out as a file and as a PDF, and the file comes in again",
  { tag: "@both" },
  async ({ program }) => {
    const { page, folder } = program;
    const title = await openSample(page, "Horn");
    const { name, bytes } = await program.saved(() => page.keyboard.press("Control+s"));
    expect(name).toMatch(/\.circuit\.json$/);
    const circuit = readCircuit(bytes);
    expect(circuit.ok && circuit.value.title).toBe(title);

    await page.keyboard.press("Control+p");
    const print = page.getByRole("button", { name: "Save as PDF" });
    await expect(print).toBeEnabled();
    const pdf = await program.saved(() => print.click());
    expect(pdf.bytes.subarray(0, 5).toString()).toBe("%PDF-");
    await page.keyboard.press("Escape");

    const file = join(folder, "given.circuit.json");
    writeFileSync(file, bytes.toString("utf8").replace(title, "Given by hand"));
    await page.getByRole("button", { name: "back to the library" }).click();
    await program.chooses(file, () => page.getByRole("button", { name: "Open a file" }).click());
    await expect(page).toHaveTitle("Given by hand – Wirefathom");
  },
);
