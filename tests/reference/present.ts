import type { Rig } from "../../core/live/rig.ts";
import type { Element } from "../../core/solve/element.ts";
import { copperRatio } from "../../core/trade/wire.ts";

/**
 * The elements of a rig as they stand now, read from the network and the rig's flags and not from its solver: null
 * where an element is open. Copper has the ohms of the ambient.
 */
export function presentElements(rig: Rig, ambientC = 20): readonly (Element | null)[] {
  const ratio = copperRatio(ambientC, 20);
  return rig.network.elements.map(({ element, copper }, index) => {
    if (rig.isOpen[index] === 1) return null;
    return copper && "ohms" in element ? { ...element, ohms: element.ohms * ratio } : element;
  });
}
