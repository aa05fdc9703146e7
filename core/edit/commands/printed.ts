import { addUnderlay } from "./addUnderlay.ts";
import { cropUnderlay } from "./cropUnderlay.ts";
import { lockUnderlay } from "./lockUnderlay.ts";
import { moveUnderlay } from "./moveUnderlay.ts";
import { placeUnderlay } from "./placeUnderlay.ts";
import { removeUnderlay } from "./removeUnderlay.ts";
import { reorderUnderlay } from "./reorderUnderlay.ts";
import { retitleUnderlay } from "./retitleUnderlay.ts";
import { scaleUnderlay } from "./scaleUnderlay.ts";
import { showUnderlay } from "./showUnderlay.ts";
import { tieToPrint } from "./tieToPrint.ts";
import { turnUnderlay } from "./turnUnderlay.ts";
import { untieFromPrint } from "./untieFromPrint.ts";

/** The commands for printed pages under the drawing and for what is tied to them. */
export const PRINTED_COMMANDS = [
  { id: "add-underlay", key: null, make: addUnderlay },
  { id: "move-underlay", key: null, make: moveUnderlay },
  { id: "turn-underlay", key: null, make: turnUnderlay },
  { id: "scale-underlay", key: null, make: scaleUnderlay },
  { id: "place-underlay", key: null, make: placeUnderlay },
  { id: "crop-underlay", key: null, make: cropUnderlay },
  { id: "show-underlay", key: null, make: showUnderlay },
  { id: "lock-underlay", key: null, make: lockUnderlay },
  { id: "retitle-underlay", key: null, make: retitleUnderlay },
  { id: "remove-underlay", key: null, make: removeUnderlay },
  { id: "reorder-underlay", key: null, make: reorderUnderlay },
  { id: "tie-to-print", key: null, make: tieToPrint },
  { id: "untie-from-print", key: null, make: untieFromPrint },
] as const;
