import type { Outcome } from "../../base/outcome.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { addAssembly } from "./addAssembly.ts";
import { addPart } from "./addPart.ts";
import { alignThings } from "./alignThings.ts";
import { arrangeParts } from "./arrangeParts.ts";
import { changeLength } from "./changeLength.ts";
import { changeOhms } from "./changeOhms.ts";
import { changeSetting } from "./changeSetting.ts";
import { chooseComplaint } from "./chooseComplaint.ts";
import { distributeThings } from "./distributeThings.ts";
import { driveOutput } from "./driveOutput.ts";
import { duplicateThings } from "./duplicateThings.ts";
import { flipPart } from "./flipPart.ts";
import { flipThings } from "./flipThings.ts";
import { healAll } from "./healAll.ts";
import { healFault } from "./healFault.ts";
import { INSTRUMENT_COMMANDS } from "./instruments.ts";
import { JOB_COMMANDS } from "./jobs.ts";
import { letGo } from "./letGo.ts";
import { movePart } from "./movePart.ts";
import { moveThings } from "./moveThings.ts";
import { observeCheck } from "./observeCheck.ts";
import { paste } from "./paste.ts";
import { pinParts } from "./pinParts.ts";
import { plantFault } from "./plantFault.ts";
import { PRINTED_COMMANDS } from "./printed.ts";
import { pullApart } from "./pullApart.ts";
import { pushHome } from "./pushHome.ts";
import { putIn } from "./putIn.ts";
import { READING_COMMANDS } from "./readings.ts";
import { recolourWire } from "./recolourWire.ts";
import { relabelConnector } from "./relabelConnector.ts";
import { relabelPart } from "./relabelPart.ts";
import { removeThings } from "./removeThings.ts";
import { renameConnector } from "./renameConnector.ts";
import { renamePart } from "./renamePart.ts";
import { renameWire } from "./renameWire.ts";
import { replaceFuse } from "./replaceFuse.ts";
import { replaceKind } from "./replaceKind.ts";
import { resizeWire } from "./resizeWire.ts";
import { restAll } from "./restAll.ts";
import { setAmbient } from "./setAmbient.ts";
import { setBattery } from "./setBattery.ts";
import { setEngine } from "./setEngine.ts";
import { setUp } from "./setUp.ts";
import { setUpWith } from "./setUpWith.ts";
import { showFaults } from "./showFaults.ts";
import { takeOut } from "./takeOut.ts";
import { throwControl } from "./throwControl.ts";
import { turnPart } from "./turnPart.ts";
import { turnThings } from "./turnThings.ts";
import { WIRING_COMMANDS } from "./wiring.ts";

/** A command: its id, the key that gives it while the drawing has the focus, and the function that makes the edit. */
export interface Command {
  readonly id: string;
  /** `Shift+T`, `F2`; null for none. Two commands share a key where only one of them is ever possible. */
  readonly key: string | null;
  /** Returns the edit, or says by refusing that it is not possible; asking changes nothing. */
  readonly make: (bench: Bench, ...given: never[]) => Outcome<Edit>;
}

/** Every command. Titles stand in `core/base/words/edit.ts` under the same ids. */
export const COMMANDS = [
  { id: "throw-control", key: "Enter", make: throwControl },
  { id: "let-go", key: null, make: letGo },
  { id: "rest-all", key: "0", make: restAll },
  { id: "set-up", key: null, make: setUp },
  { id: "set-up-with", key: null, make: setUpWith },
  { id: "pull-apart", key: "P", make: pullApart },
  { id: "push-home", key: "P", make: pushHome },
  { id: "take-out", key: "O", make: takeOut },
  { id: "put-in", key: "O", make: putIn },
  { id: "battery", key: "B", make: setBattery },
  { id: "engine", key: "E", make: setEngine },
  { id: "ambient", key: null, make: setAmbient },
  { id: "drive-output", key: null, make: driveOutput },
  { id: "plant-fault", key: "F", make: plantFault },
  { id: "heal-fault", key: null, make: healFault },
  { id: "heal-all", key: null, make: healAll },
  { id: "show-faults", key: "N", make: showFaults },
  { id: "replace-fuse", key: null, make: replaceFuse },
  { id: "observe-check", key: null, make: observeCheck },
  { id: "choose-complaint", key: null, make: chooseComplaint },
  { id: "move-part", key: null, make: movePart },
  { id: "turn-part", key: "T", make: turnPart },
  { id: "flip-part", key: "M", make: flipPart },
  { id: "relabel-part", key: "F2", make: relabelPart },
  { id: "change-setting", key: null, make: changeSetting },
  { id: "recolour-wire", key: null, make: recolourWire },
  { id: "resize-wire", key: null, make: resizeWire },
  { id: "change-length", key: null, make: changeLength },
  { id: "change-ohms", key: null, make: changeOhms },
  { id: "add-part", key: null, make: addPart },
  { id: "add-assembly", key: null, make: addAssembly },
  { id: "rename-part", key: "Shift+F2", make: renamePart },
  { id: "rename-wire", key: null, make: renameWire },
  { id: "rename-connector", key: null, make: renameConnector },
  { id: "relabel-connector", key: null, make: relabelConnector },
  { id: "duplicate-things", key: "Ctrl+D", make: duplicateThings },
  { id: "paste", key: "Ctrl+V", make: paste },
  { id: "replace-kind", key: null, make: replaceKind },
  { id: "remove-things", key: "Delete", make: removeThings },
  { id: "move-things", key: null, make: moveThings },
  { id: "turn-things", key: null, make: turnThings },
  { id: "flip-things", key: null, make: flipThings },
  { id: "align-things", key: null, make: alignThings },
  { id: "distribute-things", key: null, make: distributeThings },
  { id: "arrange-parts", key: null, make: arrangeParts },
  { id: "pin-parts", key: null, make: pinParts },
  ...WIRING_COMMANDS,
  ...PRINTED_COMMANDS,
  ...READING_COMMANDS,
  ...JOB_COMMANDS,
  ...INSTRUMENT_COMMANDS,
] as const satisfies readonly Command[];

/** Id of a command. */
export type CommandId = (typeof COMMANDS)[number]["id"];
