import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Ground } from "./halos.ts";
import { partBox } from "./places.ts";
import { pixelOf } from "./viewport.ts";

/** Length of a pin, its head's half width, and how far it stands off the corner of its part, pixels at any zoom. */
const LENGTH = 12;
const HEAD = 4;
const OFF = 3;

const pinnedIn = remember(({ placement }: Circuit) =>
  Object.entries(placement.parts).filter(([, { pinned }]) => pinned),
);

/** Paints a small pin at the upper right corner of every part of the page that arranging leaves where it stands. */
export function paintPins(ground: Ground, circuit: Circuit, page: string): void {
  const { canvas, marks, view, tones } = ground;
  const pinned = pinnedIn(circuit).filter(([, place]) => place.page === page);
  if (pinned.length === 0) return;
  canvas.save();
  canvas.lineCap = "round";
  for (const [part] of pinned) {
    const box = partBox(marks, part);
    if (!box) continue;
    const { x: right, y: top } = pixelOf(view, { x: box.right, y: box.top });
    const [x, y] = [Math.round(right) + OFF + HEAD, Math.round(top) - OFF];
    // A rim of paper keeps it apart from the lines it lies over.
    for (const [width, colour] of [
      [4, tones.raised],
      [1.6, tones.ink],
    ] as const) {
      canvas.lineWidth = width;
      canvas.strokeStyle = colour;
      canvas.beginPath();
      canvas.moveTo(x - HEAD, y - LENGTH);
      canvas.lineTo(x + HEAD, y - LENGTH);
      canvas.moveTo(x, y - LENGTH);
      canvas.lineTo(x, y);
      canvas.moveTo(x - HEAD + 1, y - LENGTH / 2);
      canvas.lineTo(x + HEAD - 1, y - LENGTH / 2);
      canvas.stroke();
    }
  }
  canvas.restore();
}
