import { EventEmitter } from "node:events";

/** Decides on a request of a page. */
type Judge = (request: { readonly url: string }, decide: (decision: { readonly cancel?: boolean }) => void) => void;

let judge: Judge = (_request, decide) => decide({});

/** What pages may do. Permissions are taken and not asked: Chromium's own are left as they are. */
const defaultSession = Object.assign(new EventEmitter(), {
  setPermissionRequestHandler: (): void => {},
  setPermissionCheckHandler: (): void => {},
  setDevicePermissionHandler: (): void => {},
  setDisplayMediaRequestHandler: (): void => {},
  setSpellCheckerEnabled: (): void => {},
  webRequest: {
    onBeforeRequest: (given: Judge): void => {
      judge = given;
    },
  },
});

/** The one session there is. */
export const session = { defaultSession };

/** True where the program cancels a request to this address. */
export function isCancelled(url: string): Promise<boolean> {
  return new Promise((resolve) => judge({ url }, ({ cancel }) => resolve(cancel === true)));
}
