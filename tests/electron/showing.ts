import type { Circuit, Picture } from "../../core/circuit/circuit.ts";
import { rectangle } from "../../core/drawing/projection.ts";

/** A circuit that shows these pictures under its first page. */
export function showing(circuit: Circuit, ...images: readonly Picture[]): Circuit {
  const [first, ...pages] = circuit.pages;
  const underlays = images.map((image, index) => ({
    id: `u${index + 1}`,
    title: `Page ${index + 1}`,
    image,
    corners: rectangle(0, 0, 200, 100),
  }));
  const { underlays: _, ...bare } = first!;
  return { ...circuit, pages: [images.length > 0 ? { ...bare, underlays } : bare, ...pages] };
}
