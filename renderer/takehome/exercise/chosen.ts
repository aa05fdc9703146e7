/** Width of the line round what is chosen, millimetres on each side of its own lines. */
const ROUND_MM = 0.9;

/** Lays a line of the accent's colour round all that is drawn of a part or wire, below it; any other goes. */
export function markChosen(svg: SVGSVGElement, id: string | null): void {
  svg.querySelector(".chosen")?.remove();
  if (id === null) return;
  const under = document.createElementNS(svg.namespaceURI!, "g") as SVGGElement;
  under.setAttribute("class", "chosen");
  for (const shape of svg.querySelectorAll(`[data-of="${CSS.escape(id)}"] > :is(path, rect, circle)`)) {
    const copy = shape.cloneNode() as SVGElement;
    const width = Number(shape.getAttribute("stroke-width") ?? 0);
    for (const name of ["fill", "stroke", "stroke-dasharray"]) copy.removeAttribute(name);
    copy.setAttribute("stroke-width", String(width + 2 * ROUND_MM));
    under.append(copy);
  }
  // The paper is the first that is painted.
  svg.querySelector(":scope > rect")?.after(under);
}
