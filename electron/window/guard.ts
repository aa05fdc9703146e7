import type { Session, WebContents } from "electron";
import { isOwnAddress } from "../protocol.ts";

/**
 * Denies a session everything that a page could ask of the machine or the network: permissions, devices, screens,
 * downloads, and every request that is not to the page itself. Left alone, Electron grants all permissions.
 */
export function guardSession(session: Session, isDeveloped: boolean): void {
  session.setPermissionRequestHandler((_contents, _permission, grant) => grant(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, choose) => choose(null));
  // Its dictionaries would come from the network.
  session.setSpellCheckerEnabled(false);
  session.on("will-download", (event) => event.preventDefault());
  session.webRequest.onBeforeRequest(({ url }, decide) => decide({ cancel: !isLocal(url, isDeveloped) }));
}

/** True where a request stays within the page: its own files, and pictures that it made itself. */
export function isLocal(address: string, isDeveloped: boolean): boolean {
  if (isOwnAddress(address)) return true;
  const protocol = URL.parse(address)?.protocol;
  return protocol === "blob:" || protocol === "data:" || (isDeveloped && protocol === "devtools:");
}

/** Keeps a page where it is: it goes nowhere, opens no window and holds no other page inside. */
export function guardContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  contents.on("will-navigate", (event) => event.preventDefault());
  contents.on("will-frame-navigate", (event) => event.preventDefault());
  contents.on("will-redirect", (event) => event.preventDefault());
  contents.on("will-attach-webview", (event) => event.preventDefault());
}
