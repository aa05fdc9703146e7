import type { Circuit } from "../../core/circuit/circuit.ts";
import { printedSpot } from "../../core/circuit/underlays.ts";
import type { Thing } from "../state/state.ts";
import type { Ground } from "./halos.ts";
import { inWindow } from "./viewport.ts";

/** Half the side of the frame, and how long its corners are, pixels. */
const HALF = 22;
const ARM = 9;

/** Paints four corners round the spot of the printed page from which the chosen part or wire was redrawn. */
export function paintPrinted(
  { canvas, view, tones }: Ground,
  circuit: Circuit,
  page: string,
  chosen: Thing | null,
): void {
  if (chosen?.is !== "part" && chosen?.is !== "wire") return;
  const { printed } = (chosen.is === "part" ? circuit.parts : circuit.wires).find(({ id }) => id === chosen.id) ?? {};
  const spot = printed && printedSpot(circuit, printed);
  if (!spot || spot.page.id !== page) return;
  const { x, y } = inWindow(view, spot);
  canvas.save();
  canvas.fillStyle = tones.halo;
  canvas.fillRect(x - HALF, y - HALF, 2 * HALF, 2 * HALF);
  canvas.strokeStyle = tones.ink;
  canvas.lineWidth = 2;
  canvas.beginPath();
  for (const [across, down] of [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const) {
    canvas.moveTo(x + across * HALF, y + down * (HALF - ARM));
    canvas.lineTo(x + across * HALF, y + down * HALF);
    canvas.lineTo(x + across * (HALF - ARM), y + down * HALF);
  }
  canvas.stroke();
  canvas.restore();
}
