import { EventEmitter } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { app, isPrevented } from "./app.ts";
import type { Devtools, Fields } from "./devtools.ts";
import { invoked } from "./ipc.ts";
import { carried, meant } from "./scheme.ts";
import { isCancelled, session } from "./session.ts";
import { stage } from "./stage.ts";

/** What a window gives its page, as far as the double heeds it. */
export interface Preferences {
  readonly preload?: string;
  readonly contextIsolation?: boolean;
  readonly sandbox?: boolean;
  readonly nodeIntegration?: boolean;
}

/** The world that the preload runs in. */
const WORLD = "preload";
const inWorlds = (name: string): string => readFileSync(join(import.meta.dirname, name), "utf8");

interface Sent {
  readonly id: number;
  readonly channel: string;
  readonly given: readonly unknown[];
  readonly href: string;
  readonly isTop: boolean;
}

const all = new Set<WebContents>();

/** A page of Chromium in the place of a page of Electron. */
export class WebContents extends EventEmitter {
  readonly session = session.defaultSession;
  readonly #preferences: Preferences;
  readonly #size: Fields;
  readonly #began: Promise<void>;
  #devtools!: Devtools;
  #target = "";
  #sessionId = "";
  #url = "";
  /** What the program itself has under way; all else is the page's own wish. */
  #isLoading = false;
  #navigation = "";
  #openHandler: (details: Fields) => { readonly action: string } = () => ({ action: "allow" });

  constructor(preferences: Preferences, size: Fields) {
    super();
    this.#preferences = preferences;
    this.#size = size;
    all.add(this);
    app.emit("web-contents-created", {}, this);
    this.#began = this.#begin();
  }

  getURL = (): string => this.#url;
  isDestroyed = (): boolean => !all.has(this);
  isTarget = (target: string): boolean => this.#target === target;
  setWindowOpenHandler(handler: (details: Fields) => { readonly action: string }): void {
    this.#openHandler = handler;
  }
  /** As a page closes itself: its window decides. */
  close(): void {
    this.emit("standin-close");
  }
  async loadURL(address: string): Promise<void> {
    await this.#began;
    this.#isLoading = true;
    await this.#send("Page.navigate", { url: carried(address) });
  }
  reload(): void {
    this.#tell("Page.reload");
  }
  forcefullyCrashRenderer(): void {
    this.#tell("Page.crash");
  }
  /** The value of an expression in the page's own world. */
  async executeJavaScript(expression: string): Promise<unknown> {
    const asked = { expression, awaitPromise: true, returnByValue: true };
    const { result } = await this.#send<{ result: { value?: unknown } }>("Runtime.evaluate", asked);
    return result.value;
  }
  async destroy(): Promise<void> {
    all.delete(this);
    this.emit("destroyed");
    await this.#began;
    await this.#devtools.send("Target.closeTarget", { targetId: this.#target }).catch(() => {});
  }

  #send<T = unknown>(method: string, fields: Fields = {}): Promise<T> {
    return this.#devtools.send<T>(method, fields, this.#sessionId);
  }
  /** A command that nobody waits for: the page may be gone before it can answer. */
  #tell(method: string, fields: Fields = {}): void {
    this.#send(method, fields).catch(() => {});
  }
  #on<T>(method: string, heard: (fields: T) => void): void {
    this.#devtools.on<T>(method, this.#sessionId, heard);
  }

  async #begin(): Promise<void> {
    this.#devtools = await stage.devtools.promise;
    const page = { url: "about:blank", newWindow: true, ...this.#size };
    const { targetId } = await this.#devtools.send<{ targetId: string }>("Target.createTarget", page);
    this.#target = targetId;
    const attach = { targetId, flatten: true };
    const { sessionId } = await this.#devtools.send<{ sessionId: string }>("Target.attachToTarget", attach);
    this.#sessionId = sessionId;
    this.#listen();
    await this.#send("Page.enable");
    await this.#send("Runtime.enable");
    await this.#send("Inspector.enable");
    await this.#send("Fetch.enable", { patterns: [{ urlPattern: "*" }] });
    await this.#devtools.send("Target.setDiscoverTargets", { discover: true });
    await this.#send("Runtime.addBinding", { name: "standinSend", executionContextName: WORLD });
    await this.#send("Page.addScriptToEvaluateOnNewDocument", { source: inWorlds("pageWorld.js") });
    const { preload } = this.#preferences;
    if (preload === undefined) return;
    const source = `(${inWorlds("preloadWorld.js").replace(/;\s*$/, "")})((require, module, exports) => {${readFileSync(preload, "utf8")}\n})`;
    await this.#send("Page.addScriptToEvaluateOnNewDocument", { source, worldName: WORLD });
  }

  #listen(): void {
    this.#on<{ payload: string; executionContextId: number }>(
      "Runtime.bindingCalled",
      (call) => void this.#answer(call),
    );
    this.#on<Paused>("Fetch.requestPaused", (paused) => void this.#judge(paused));
    this.#on<{ url: string; frameId: string; navigationType: string }>("Page.frameStartedNavigating", (started) => {
      const isMainFrame = started.frameId === this.#target;
      if (isMainFrame) this.#navigation = started.navigationType;
      const isSameDocument = /same/i.test(started.navigationType);
      this.emit("did-start-navigation", { url: meant(started.url), isMainFrame, isSameDocument });
    });
    this.#on<{ frame: { id: string; url: string } }>("Page.frameNavigated", ({ frame }) => {
      if (frame.id !== this.#target) return;
      this.#url = meant(frame.url);
      this.#isLoading = false;
    });
    this.#on("Page.loadEventFired", () => this.emit("did-finish-load"));
    this.#on("Inspector.targetCrashed", () => this.emit("render-process-gone", {}, { reason: "crashed", exitCode: 1 }));
    this.#devtools.on<Created>("Target.targetCreated", "", ({ targetInfo: { targetId, openerId, url } }) => {
      if (openerId !== this.#target || this.#openHandler({ url: meant(url) }).action !== "deny") return;
      this.#turnAway(targetId).catch(() => {});
    });
  }

  /**
   * Closes a page that may not be opened. The driver of tests has it wait for its word; closed before that comes, it would
   * keep the page that opened it waiting for ever, as both have one thread.
   */
  async #turnAway(targetId: string): Promise<void> {
    const attach = { targetId, flatten: true };
    const { sessionId } = await this.#devtools.send<{ sessionId: string }>("Target.attachToTarget", attach);
    await this.#devtools.send("Runtime.runIfWaitingForDebugger", {}, sessionId);
    await this.#devtools.send("Target.closeTarget", { targetId });
  }

  async #answer({ payload, executionContextId }: { payload: string; executionContextId: number }): Promise<void> {
    const { id, channel, given, href, isTop } = JSON.parse(payload) as Sent;
    const senderFrame = { url: meant(href), parent: isTop ? null : {} };
    let said: readonly [error: string | null, value?: unknown];
    try {
      said = [null, await invoked(channel, { sender: this, senderFrame }, given)];
    } catch (error) {
      said = [`Error invoking remote method '${channel}': ${String(error)}`];
    }
    const [error, value] = said;
    const call = {
      functionDeclaration: "(id, error, value) => standinDone(id, error, value)",
      executionContextId,
      arguments: [{ value: id }, { value: error }, { value }],
    };
    this.#tell("Runtime.callFunctionOn", call);
  }

  async #judge({ requestId, request, resourceType, frameId }: Paused): Promise<void> {
    const url = meant(request.url);
    const isMainFrame = frameId === this.#target;
    const isOwnWish = resourceType === "Document" && !this.#isLoading && !/reload/i.test(this.#navigation);
    const about = { url, isMainFrame };
    if (isOwnWish && (isPrevented("will-frame-navigate", this, about) || isPrevented("will-navigate", this, about))) {
      this.#tell("Fetch.failRequest", { requestId, errorReason: "Aborted" });
    } else if (await isCancelled(url)) this.#tell("Fetch.failRequest", { requestId, errorReason: "BlockedByClient" });
    else this.#tell("Fetch.continueRequest", { requestId });
  }
}

interface Paused {
  readonly requestId: string;
  readonly request: { readonly url: string };
  readonly resourceType: string;
  readonly frameId: string;
}

interface Created {
  readonly targetInfo: { readonly targetId: string; readonly openerId?: string; readonly url: string };
}

/** All pages there are. */
export const webContents = {
  getAllWebContents: (): readonly WebContents[] => [...all],
  /** Asked by the driver of tests. */
  fromDevToolsTargetId: (target: string): WebContents | undefined => [...all].find((each) => each.isTarget(target)),
};
