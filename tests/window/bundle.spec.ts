import type { Locator } from "@playwright/test";
import { readCircuit } from "../../schemas/circuit.ts";
import { place, take } from "./byKeys.ts";
import { expect, story } from "./story.ts";

/** Drags what is seen of one thing to the middle of another, and a little beside it. */
async function dragTo(from: Locator, to: Locator, aside: number): Promise<void> {
  const [one, other] = [(await from.boundingBox())!, (await to.boundingBox())!];
  const { mouse } = from.page();
  await mouse.move(one.x + one.width / 2, one.y + one.height / 2);
  await mouse.down();
  await mouse.move(other.x + other.width / 2 + aside, other.y + other.height / 2, { steps: 6 });
  await mouse.up();
}

story(
  "a ready assembly is dragged in, wires are led several at once, what was seen on the vehicle is listed",
  async ({ program }) => {
    const { page } = program;
    const drawing = page.getByRole("application");
    const hint = page.locator(".wire-hint");
    const wires = async () => {
      const { bytes } = await program.saved(() => page.keyboard.press("Control+s"));
      const circuit = readCircuit(bytes);
      return circuit.ok ? circuit.value.wires.map(({ from, to, colour }) => `${from} ${to} ${colour ?? "?"}`) : [];
    };
    await page.getByRole("button", { name: "New circuit" }).click();

    // Dragged from the catalogue it is one step, with designators of its own, and the hand is back.
    await page.getByRole("button", { name: "Add a part" }).click();
    await page.getByRole("searchbox", { name: /Find a part/ }).fill("ready lamp");
    await dragTo(page.getByRole("button", { name: "Two lamps on one ground" }), drawing, 40);
    await expect(page.getByRole("button", { name: /^Undo: draw two lamps on one ground/ })).toBeVisible();
    await expect(page.getByRole("button", { name: "Choose", exact: true })).toHaveAttribute("aria-pressed", "true");
    await drawing.focus();
    await page.keyboard.press("Control+z");
    await expect(page.getByText("Nothing is drawn on this page yet")).toBeVisible();
    await page.keyboard.press("Control+y");
    await place(page, "battery", -30, 0);

    // Two terminals are gathered and led to the one post, in the colours typed one after the other.
    await drawing.focus();
    await page.keyboard.press("l");
    await expect(hint).toContainText("Several wires at once");
    await take(page, "E1.1", "Shift+Enter");
    await take(page, "E2.1", "Shift+Enter");
    await expect(hint).toContainText("2 terminals gathered");
    await take(page, "G1.+");
    const card = page.getByRole("group", { name: "Wires W4 to W5" });
    await expect(card.getByLabel("Colours")).toBeFocused();
    await page.keyboard.type("rd rdye");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    expect((await wires()).slice(3)).toEqual(["E1.1 G1.+ RD", "E2.1 G1.+ RD/YE"]);

    // What was seen otherwise on the vehicle stands among the loose ends.
    await page.keyboard.press("Control+f");
    await page.keyboard.type("W4");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Seen on the vehicle" }).click();
    await page.getByText("Seen on the vehicle").last().click();
    await page.getByLabel("Colour seen").fill("bn");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: /loose end/ }).click();
    await expect(page.getByText("W4 is printed RD and was seen BN on the vehicle.")).toBeVisible();
    await page.keyboard.press("Escape");

    // A part that is moved onto another says on what it stands.
    await page.keyboard.press("Control+f");
    await page.keyboard.type("E1");
    await page.keyboard.press("Enter");
    for (let step = 0; step < 6; step++) await page.keyboard.press("ArrowRight");
    await expect(page.getByText(/^E1, .*Stands on E2/)).toBeAttached();
  },
);
