import { type IpcMainInvokeEvent, ipcMain, type WebContents } from "electron";
import { CALL_CHANNEL } from "../../schemas/bridge.ts";
import { answerText } from "../answers/door.ts";
import type { Host } from "../answers/host.ts";
import { isOwnAddress } from "../protocol.ts";

/** A call that is none may be named by anything. */
const LONGEST_NAME = 40;

/** Answers the calls of the window's page. A call from anywhere else is rejected before it is looked at. */
export function handleCalls(host: Host): void {
  ipcMain.handle(CALL_CHANNEL, (event, name: unknown, argument: unknown) => {
    if (!isOwnPage(event)) throw new Error("only the window's own page may ask");
    if (typeof name !== "string" || typeof argument !== "string") throw new Error("a call is two texts");
    host.reports.note(name.slice(0, LONGEST_NAME));
    return answerText(host, name, argument, pageGone(event.sender)).catch((fault: unknown) => {
      host.requests.add({ report: host.reports.keepOwn(fault, "program") });
      throw fault;
    });
  });
}

/** True where a call comes from the top frame of the window's own page. */
export function isOwnPage({ senderFrame }: Pick<IpcMainInvokeEvent, "senderFrame">): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOwnAddress(senderFrame.url);
}

const present = new WeakMap<WebContents, AbortController>();

/** A signal that is given when the page now in these contents leaves them. */
function pageGone(contents: WebContents): AbortSignal {
  const known = present.get(contents);
  if (known) return known.signal;
  const page = new AbortController();
  present.set(contents, page);
  const leave = (): void => {
    if (present.get(contents) === page) present.delete(contents);
    contents.off("did-start-navigation", navigate);
    contents.off("render-process-gone", leave);
    contents.off("destroyed", leave);
    page.abort();
  };
  const navigate = ({ isMainFrame, isSameDocument }: { isMainFrame: boolean; isSameDocument: boolean }): void => {
    if (isMainFrame && !isSameDocument) leave();
  };
  contents.on("did-start-navigation", navigate);
  contents.on("render-process-gone", leave);
  contents.on("destroyed", leave);
  return page.signal;
}
