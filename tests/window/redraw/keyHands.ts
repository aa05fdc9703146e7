import { expect, type Locator } from "@playwright/test";
import { Hands } from "./hands.ts";

/** More than the stops of Tab on any screen. */
const MOST_STOPS = 150;

/** Hands on the keys alone: what a mouse would click is come to by Tab, and every press of it counts. */
export class KeyHands extends Hands {
  override async button(name: string | RegExp): Promise<void> {
    const exact = typeof name === "string";
    await this.#goTo(this.page.getByRole("button", { name, exact }).first());
    await this.key("Enter");
  }

  override async unfold(words: string): Promise<void> {
    await this.#goTo(this.page.locator("summary").filter({ hasText: words }).first());
    await this.key("Enter");
  }

  /** By Tab to what is wanted. */
  async #goTo(wanted: Locator): Promise<void> {
    await expect(wanted).toBeVisible();
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await this.key("Tab");
    }
    throw new Error(`no Tab leads to ${String(wanted)}`);
  }

  /** By Tab to the drawing. */
  async toDrawing(): Promise<void> {
    await this.#goTo(this.page.getByRole("application"));
  }

  /** What the program told last, to whoever does not look. */
  async told(): Promise<string> {
    return (await this.page.locator("[data-region=said]").textContent()) ?? "";
  }

  /** Arrows for so many grid units, tens with Shift. */
  async steps(right: number, down: number): Promise<void> {
    for (const [count, less, more] of [
      [right, "ArrowLeft", "ArrowRight"],
      [down, "ArrowUp", "ArrowDown"],
    ] as const) {
      // Nine ones are one ten and one back.
      const tens = Math.round(count / 10);
      const ones = count - 10 * tens;
      await this.key(`Shift+${tens < 0 ? less : more}`, Math.abs(tens));
      await this.key(ones < 0 ? less : more, Math.abs(ones));
    }
  }
}
