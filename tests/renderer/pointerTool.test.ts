import { beforeEach, describe, expect, test } from "vitest";
import { type PointerHost, PointerTool } from "../../renderer/canvas/pointerTool.ts";
import type { Hit } from "../../renderer/canvas/sheetIndex.ts";
import type { Pixel } from "../../renderer/canvas/viewport.ts";

const BLADE: Hit = {
  thing: { is: "part", id: "S6" },
  place: { part: "S6", control: "S6", foot: { x: 0, y: 0 }, tip: { x: 1, y: 0 }, positions: ["open"] },
};
const KEY: Hit = { ...BLADE, thing: { is: "part", id: "S1" } };
const MOTOR: Hit = { thing: { is: "part", id: "M4" }, place: null };
const WIRE: Hit = { thing: { is: "wire", id: "W1" }, place: null };

/** A drawing with a spring-back blade at x 0 to 99, a latching one to 199, a motor to 299, a wire to 399, else paper. */
class FakeHost implements PointerHost {
  readonly done: string[] = [];
  private readonly all = [BLADE, KEY, MOTOR, WIRE];

  hitAt({ x }: Pixel): Hit | null {
    return this.all[Math.floor(x / 100)] ?? null;
  }
  hover(hit: Hit | null): void {
    this.done.push(`hover ${hit?.thing.id ?? "nothing"}`);
  }
  panBy(dx: number, dy: number): void {
    this.done.push(`pan ${dx} ${dy}`);
  }
  zoomBy(factor: number, { x, y }: Pixel): void {
    this.done.push(`zoom ${factor} at ${x} ${y}`);
  }
  settle(): void {
    this.done.push("settle");
  }
  press(hit: Hit): boolean {
    if (hit !== BLADE) return false;
    this.done.push("press");
    return true;
  }
  release(wasTap: boolean): void {
    this.done.push(wasTap ? "release after a tap" : "release");
  }
  click(hit: Hit | null, _at: Pixel, adds: boolean): void {
    this.done.push(`click ${hit?.thing.id ?? "nothing"}${adds ? " beside" : ""}`);
  }
  frame(from: Pixel, to: Pixel): void {
    this.done.push(`frame ${from.x} ${from.y} to ${to.x} ${to.y}`);
  }
  endFrame(end: "choose" | "abandon"): void {
    this.done.push(`frame ends: ${end}`);
  }
  take(hit: Hit): boolean {
    if (hit !== MOTOR) return false;
    this.done.push("take");
    return true;
  }
  carryBy(dx: number, dy: number): void {
    this.done.push(`carry ${dx} ${dy}`);
  }
  putDown(): void {
    this.done.push("put down");
  }
  abandon(): void {
    this.done.push("abandon");
  }
}

let host = new FakeHost();
let tool = new PointerTool(host);
beforeEach(() => {
  host = new FakeHost();
  tool = new PointerTool(host);
});

/** One pointer, whose events say what they are told. */
function pointer(pointerType: "mouse" | "touch" | "pen", pointerId = 1) {
  const press = (timeStamp: number, button = 0, shiftKey = false) => ({
    pointerId,
    pointerType,
    button,
    shiftKey,
    timeStamp,
  });
  return {
    down: (x: number, y: number, { ms = 0, button = 0, space = false, shift = false } = {}) =>
      tool.down(press(ms, button, shift), { x, y }, space),
    move: (x: number, y: number) => tool.move(press(0), { x, y }),
    up: (x: number, y: number, ms = 0) => tool.up(press(ms), { x, y }),
  };
}

describe.each(["mouse", "touch", "pen"] as const)("%s", (kind) => {
  test("a press and a lift on one spot is a click on what lay there", () => {
    const { down, up } = pointer(kind);
    down(150, 10);
    up(150, 10);
    down(350, 10);
    up(350, 10);
    down(450, 10);
    up(450, 10);
    expect(host.done).toEqual(["click S1", "click W1", "click nothing"]);
    expect(tool.isBusy).toBe(false);
  });

  test("with Shift a click chooses beside, and a drag draws a box, whatever lies there", () => {
    const { down, move, up } = pointer(kind);
    down(50, 10, { shift: true });
    up(50, 10);
    expect(host.done).toEqual(["click S6 beside"]);
    down(250, 10, { shift: true });
    move(290, 60);
    move(380, 90);
    up(380, 90);
    expect(host.done.slice(1)).toEqual(["frame 250 10 to 290 60", "frame 250 10 to 380 90", "frame ends: choose"]);
    down(250, 10, { shift: true });
    move(290, 60);
    tool.cancel();
    expect(host.done.at(-1)).toBe("frame ends: abandon");
  });

  test("a finger that shakes less than it may is still clicking", () => {
    const still = { mouse: 4, touch: 10, pen: 6 }[kind];
    const { down, move, up } = pointer(kind);
    down(350, 10);
    move(350 + still, 10);
    up(350 + still, 10);
    expect(host.done).toEqual(["click W1"]);
    down(450, 10);
    move(450, 11 + still);
    expect(host.done.at(-1)).toBe(`pan 0 ${still + 1}`);
  });

  test("what springs back is held while pressed; a short press is a tap", () => {
    const { down, up } = pointer(kind);
    down(50, 10, { ms: 1000 });
    expect(host.done).toEqual(["press"]);
    up(50, 10, 1249);
    down(50, 10, { ms: 2000 });
    up(50, 10, 2250);
    expect(host.done).toEqual(["press", "release after a tap", "press", "release"]);
  });

  test("a hold does not move the drawing, wherever the finger slips", () => {
    const { down, move, up } = pointer(kind);
    down(50, 10);
    move(500, 500);
    up(500, 500, 900);
    expect(host.done).toEqual(["press", "release"]);
  });

  test("a drag on a part carries it from where it was taken", () => {
    const { down, move, up } = pointer(kind);
    down(250, 10);
    move(270, 10);
    move(280, 40);
    up(280, 40);
    expect(host.done).toEqual(["take", "carry 20 0", "carry 30 30", "put down"]);
  });

  test("a drag on bare paper or on a wire moves the drawing by all it was moved", () => {
    for (const x of [450, 350]) {
      host.done.length = 0;
      const { down, move, up } = pointer(kind);
      down(x, 10);
      move(x + 20, 10);
      expect(tool.isPanning).toBe(true);
      move(x + 20, 15);
      up(x + 20, 15);
      expect(host.done).toEqual(["pan 20 0", "pan 0 5", "settle"]);
    }
  });

  test("given up, a hold is let go, what was carried stays, and nothing is clicked after it", () => {
    const { down, move, up } = pointer(kind);
    down(50, 10);
    tool.cancel();
    up(50, 10, 10);
    down(250, 10);
    move(280, 10);
    tool.cancel();
    up(280, 10);
    down(150, 10);
    tool.cancel();
    up(150, 10);
    expect(host.done).toEqual(["press", "release", "take", "carry 30 0", "abandon"]);
  });
});

describe("the mouse", () => {
  const { down, move, up } = pointer("mouse");

  test("passing over something shows it", () => {
    move(50, 10);
    move(450, 10);
    expect(host.done).toEqual(["hover S6", "hover nothing"]);
  });

  test("the middle button and the space bar move the drawing from anywhere", () => {
    down(50, 10, { button: 1 });
    move(60, 10);
    up(60, 10);
    down(250, 10, { space: true });
    move(251, 10);
    up(251, 10);
    expect(host.done).toEqual(["pan 10 0", "settle", "pan 1 0", "settle"]);
  });

  test("the right button is left to the menu", () => {
    down(150, 10, { button: 2 });
    up(150, 10);
    expect(host.done).toEqual([]);
    expect(tool.isBusy).toBe(false);
  });
});

describe("fingers", () => {
  const one = pointer("touch", 1);
  const other = pointer("touch", 2);

  test("a finger that passes shows nothing", () => {
    one.move(50, 10);
    expect(host.done).toEqual([]);
  });

  test("two fingers pan and zoom about their middle", () => {
    one.down(450, 100);
    other.down(550, 100);
    other.move(650, 100);
    expect(host.done).toEqual(["pan 50 0", "zoom 2 at 550 100"]);
  });

  test("one finger that stays moves the drawing on, and the last lift ends it without a click", () => {
    one.down(450, 100);
    other.down(550, 100);
    other.up(550, 100);
    one.move(460, 100);
    one.up(460, 100);
    expect(host.done).toEqual(["pan 10 0", "settle"]);
    expect(tool.isBusy).toBe(false);
  });

  test("a second finger lets go of what the first held, and puts back what it carried", () => {
    one.down(50, 100);
    other.down(500, 100);
    other.up(500, 100);
    one.up(50, 100);
    expect(host.done).toEqual(["press", "release", "settle"]);
    host.done.length = 0;
    one.down(250, 100);
    one.move(290, 100);
    other.down(500, 100);
    expect(host.done).toEqual(["take", "carry 40 0", "abandon"]);
  });

  test("fingers on one spot do not zoom without end", () => {
    one.down(450, 100);
    other.down(450, 100);
    other.move(460, 100);
    expect(host.done).toEqual(["pan 5 0"]);
  });

  test("a third finger changes nothing that the two do", () => {
    const third = pointer("touch", 3);
    one.down(450, 100);
    other.down(550, 100);
    third.down(500, 300);
    third.up(500, 300);
    host.done.length = 0;
    other.move(650, 100);
    expect(host.done).toEqual(["pan 50 0", "zoom 2 at 550 100"]);
  });
});
