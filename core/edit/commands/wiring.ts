import { addAccess } from "./addAccess.ts";
import { addCheck } from "./addCheck.ts";
import { addConnector } from "./addConnector.ts";
import { addPage } from "./addPage.ts";
import { addScene } from "./addScene.ts";
import { askInScene } from "./askInScene.ts";
import { bendWire } from "./bendWire.ts";
import { changeAccess } from "./changeAccess.ts";
import { changeCautions } from "./changeCautions.ts";
import { changeCheck } from "./changeCheck.ts";
import { changeColourCodes } from "./changeColourCodes.ts";
import { changePins } from "./changePins.ts";
import { changePositions } from "./changePositions.ts";
import { changeRevision } from "./changeRevision.ts";
import { changeScene } from "./changeScene.ts";
import { changeTable } from "./changeTable.ts";
import { changeTerminals } from "./changeTerminals.ts";
import { changeTitle } from "./changeTitle.ts";
import { changeVehicle } from "./changeVehicle.ts";
import { changeVolts } from "./changeVolts.ts";
import { drawWire } from "./drawWire.ts";
import { drawWires } from "./drawWires.ts";
import { drawWireToWire } from "./drawWireToWire.ts";
import { fillCavity } from "./fillCavity.ts";
import { fillPins } from "./fillPins.ts";
import { linkPages } from "./linkPages.ts";
import { mergePages } from "./mergePages.ts";
import { noteSeen } from "./noteSeen.ts";
import { photoAccess } from "./photoAccess.ts";
import { reattachWire } from "./reattachWire.ts";
import { recolourWires } from "./recolourWires.ts";
import { removeAccess } from "./removeAccess.ts";
import { removeCheck } from "./removeCheck.ts";
import { removeControl } from "./removeControl.ts";
import { removePage } from "./removePage.ts";
import { removeScene } from "./removeScene.ts";
import { renameControl } from "./renameControl.ts";
import { reorderPage } from "./reorderPage.ts";
import { reorderScene } from "./reorderScene.ts";
import { resizePage } from "./resizePage.ts";
import { resizeWires } from "./resizeWires.ts";
import { retitlePage } from "./retitlePage.ts";
import { setReach } from "./setReach.ts";
import { setRows } from "./setRows.ts";
import { wireAcross } from "./wireAcross.ts";
import { writeTable } from "./writeTable.ts";

/** Commands that draw wires, connectors, switch tables, places and pages; `index.ts` lists them with all others. */
export const WIRING_COMMANDS = [
  { id: "draw-wire", key: null, make: drawWire },
  { id: "draw-wires", key: null, make: drawWires },
  { id: "wire-across", key: null, make: wireAcross },
  { id: "recolour-wires", key: null, make: recolourWires },
  { id: "resize-wires", key: null, make: resizeWires },
  { id: "note-seen", key: null, make: noteSeen },
  { id: "draw-wire-to-wire", key: null, make: drawWireToWire },
  { id: "bend-wire", key: null, make: bendWire },
  { id: "reattach-wire", key: null, make: reattachWire },
  { id: "add-connector", key: null, make: addConnector },
  { id: "set-rows", key: null, make: setRows },
  { id: "fill-cavity", key: null, make: fillCavity },
  { id: "fill-pins", key: null, make: fillPins },
  { id: "change-positions", key: null, make: changePositions },
  { id: "write-table", key: null, make: writeTable },
  { id: "rename-control", key: null, make: renameControl },
  { id: "remove-control", key: null, make: removeControl },
  { id: "change-terminals", key: null, make: changeTerminals },
  { id: "change-pins", key: null, make: changePins },
  { id: "change-table", key: null, make: changeTable },
  { id: "add-access", key: null, make: addAccess },
  { id: "change-access", key: null, make: changeAccess },
  { id: "photo-access", key: null, make: photoAccess },
  { id: "remove-access", key: null, make: removeAccess },
  { id: "set-reach", key: null, make: setReach },
  { id: "add-page", key: null, make: addPage },
  { id: "retitle-page", key: null, make: retitlePage },
  { id: "remove-page", key: null, make: removePage },
  { id: "merge-pages", key: null, make: mergePages },
  { id: "reorder-page", key: null, make: reorderPage },
  { id: "resize-page", key: null, make: resizePage },
  { id: "link-pages", key: null, make: linkPages },
  { id: "change-title", key: null, make: changeTitle },
  { id: "change-vehicle", key: null, make: changeVehicle },
  { id: "change-volts", key: null, make: changeVolts },
  { id: "change-colour-codes", key: null, make: changeColourCodes },
  { id: "change-revision", key: null, make: changeRevision },
  { id: "change-cautions", key: null, make: changeCautions },
  { id: "add-check", key: null, make: addCheck },
  { id: "change-check", key: null, make: changeCheck },
  { id: "remove-check", key: null, make: removeCheck },
  { id: "add-scene", key: null, make: addScene },
  { id: "change-scene", key: null, make: changeScene },
  { id: "ask-in-scene", key: null, make: askInScene },
  { id: "remove-scene", key: null, make: removeScene },
  { id: "reorder-scene", key: null, make: reorderScene },
] as const;
