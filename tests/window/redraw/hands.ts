import type { Page } from "@playwright/test";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { Spot } from "../../../core/drawing/mark.ts";
import { unpackCircuit } from "../../../electron/pack/pack.ts";
import type { Program } from "../story.ts";

/**
 * A hand on the mouse and one on the keys, which count what they do: a click, a drag, a key and a word typed are one action
 * each. Where the page of paper lies on the screen they learn by looking at things of which they know where they stand.
 */
export class Hands {
  readonly #program: Program;
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
  async key(name: string, times = 1): Promise<void> {
    for (let time = 0; time < times; time++) {
      this.#actions++;
      await this.page.keyboard.press(name);
    }
  }

  /** A word, nothing after it. */
  async word(text: string): Promise<void> {
    this.#actions++;
    await this.page.keyboard.type(text);
  }

  /** A button by its name. */
  async button(name: string | RegExp): Promise<void> {
    this.#actions++;
    await this.page
      .getByRole("button", { name, exact: typeof name === "string" })
      .first()
      .click();
  }

  /** Words that unfold something. */
  async unfold(words: string): Promise<void> {
    this.#actions++;
    await this.page.getByText(words).click();
  }

  /** The pointer on a spot of the paper, grid units. */
  async point(spot: Spot): Promise<void> {
    this.#actions++;
    const { x, y } = this.pixelOf(spot);
    await this.page.mouse.move(x, y);
  }

  /** A click on a spot of the paper, grid units. */
  async click(spot: Spot): Promise<void> {
    await this.point(spot);
    await this.page.mouse.down();
    await this.page.mouse.up();
  }

  /** Where a spot of the paper is on the screen, as far as is known by now. */
  pixelOf({ x, y }: Spot): Spot {
    const { by, left, top } = this.#scale;
    return { x: left + by * x, y: top + by * y };
  }

  /** Learns from spots of the paper and where each of them is on the screen: the straight line that fits them best. */
  look(spots: readonly Spot[], pixels: readonly Spot[]): void {
    const [spot, pixel] = [middleOf(spots), middleOf(pixels)];
    let [above, below] = [0, 0];
    for (const [index, { x, y }] of spots.entries()) {
      const at = pixels[index]!;
      above += (x - spot.x) * (at.x - pixel.x) + (y - spot.y) * (at.y - pixel.y);
      below += (x - spot.x) ** 2 + (y - spot.y) ** 2;
    }
    const by = above / below;
    this.#scale = { by, left: pixel.x - by * spot.x, top: pixel.y - by * spot.y };
  }

  /** The circuit as a copy of it that is saved now has it. Looking is no action. */
  async circuit(): Promise<Circuit> {
    const { bytes } = await this.#program.saved(() => this.page.keyboard.press("Control+s"));
    const packed = unpackCircuit(bytes);
    if (!packed.ok) throw new Error(`the copy cannot be read: ${packed.refusal.code}`);
    return packed.value.circuit;
  }
}

function middleOf(spots: readonly Spot[]): Spot {
  const sum = (side: "x" | "y"): number => spots.reduce((total, spot) => total + spot[side], 0);
  return { x: sum("x") / spots.length, y: sum("y") / spots.length };
}
