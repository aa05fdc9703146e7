import type { Page } from "@playwright/test";
import type { Spot } from "../../../core/drawing/mark.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import type { Program } from "../story.ts";

/**
 * Mouse and keys that count what they do: a click, a drag, a key and a word typed are one action each. Where things are on
 * the screen they learn by looking: from parts that were placed, and where those then stand on the page.
 */
export class Hands {
  readonly #program: Program;
  /** Clicks that placed a part, in pixels, by the spot on the page that each of them meant. */
  #actions = 0;
  #scale = { by: 1, left: 0, top: 0 };

  constructor(program: Program) {
    this.#program = program;
  }

  /** Actions so far. */
  get actions(): number {
    return this.#actions;
  }

  get page(): Page {
    return this.#program.page;
  }

  /** A key or a chord. */
  async key(name: string): Promise<void> {
    this.#actions++;
    await this.page.keyboard.press(name);
  }

  /** A word and nothing after it. */
  async word(text: string): Promise<void> {
    this.#actions++;
    await this.page.keyboard.type(text);
  }

  /** A button by its name, clicked. */
  async button(name: string | RegExp): Promise<void> {
    this.#actions++;
    await this.page.getByRole("button", { name, exact: typeof name === "string" }).click();
  }

  /** A click on a spot of the page of paper, grid units. */
  async click(spot: Spot): Promise<void> {
    this.#actions++;
    const { x, y } = this.#pixel(spot);
    await this.page.mouse.move(x, y);
    await this.page.mouse.click(x, y);
  }

  /** Learns where the page lies: two things of which it is known where they stand, and where they were clicked. */
  look(spots: readonly Spot[], pixels: readonly Spot[]): void {
    const middle = (of: readonly Spot[], side: "x" | "y"): number =>
      of.reduce((sum, spot) => sum + spot[side], 0) / of.length;
    const [sx, sy, px, py] = [middle(spots, "x"), middle(spots, "y"), middle(pixels, "x"), middle(pixels, "y")];
    let [above, below] = [0, 0];
    for (const [index, spot] of spots.entries()) {
      const pixel = pixels[index]!;
      above += (spot.x - sx) * (pixel.x - px) + (spot.y - sy) * (pixel.y - py);
      below += (spot.x - sx) ** 2 + (spot.y - sy) ** 2;
    }
    const by = above / below;
    this.#scale = { by, left: px - by * sx, top: py - by * sy };
  }

  #pixel({ x, y }: Spot): Spot {
    return { x: this.#scale.left + this.#scale.by * x, y: this.#scale.top + this.#scale.by * y };
  }

  /** The circuit as a file that is saved now has it. Looking is no action. */
  async circuit(): Promise<Circuit> {
    const { bytes } = await this.#program.saved(() => this.page.keyboard.press("Control+s"));
    const circuit = readCircuit(bytes);
    if (!circuit.ok) throw new Error(`the saved circuit is refused: ${circuit.refusal.code}`);
    return circuit.value;
  }
}
