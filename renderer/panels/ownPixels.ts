/**
 * Left edge, right edge and width of an element in its own pixels: what the interface size makes larger counts as it was
 * before, as in `clientWidth`.
 */
export function ownPixels(element: Element): { readonly left: number; readonly right: number; readonly width: number } {
  const { left, right, width } = element.getBoundingClientRect();
  const zoom = element.currentCSSZoom;
  return { left: left / zoom, right: right / zoom, width: width / zoom };
}
