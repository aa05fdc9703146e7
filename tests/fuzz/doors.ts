import type { Door } from "./door.ts";
import { FILE_DOORS } from "./doors/files.ts";
import { HOST_DOORS } from "./doors/host.ts";
import { LINE_DOORS } from "./doors/line.ts";
import { PAGE_DOORS } from "./doors/page.ts";
import { PICTURE_DOORS } from "./doors/pictures.ts";
import { TYPED_DOORS } from "./doors/typed.ts";

/** What is made for pages alone; the compiler judges it by another list of names, so it does not follow this path. */
const FOR_PAGES = "../renderer/classDoor.ts";

/** Every way by which something from outside comes in. A new one belongs here; what it takes is then tried by lot. */
export async function allDoors(): Promise<readonly Door[]> {
  const { CLASS_DOOR } = (await import(FOR_PAGES)) as { readonly CLASS_DOOR: Door };
  return [...FILE_DOORS, ...PICTURE_DOORS, ...TYPED_DOORS, ...HOST_DOORS, ...PAGE_DOORS, CLASS_DOOR, ...LINE_DOORS];
}
