import { EventEmitter } from "node:events";

type Handler = (...given: never[]) => unknown;

/** What a test reads of the fake: every call in order, and what was registered. */
export const record = {
  calls: [] as (readonly [name: string, ...given: unknown[]])[],
  handlers: new Map<string, Handler>(),
  windows: [] as FakeWindow[],
  guards: {} as Record<string, Handler>,
  exposed: {} as Record<string, Record<string, unknown>>,
  invoked: [] as unknown[][],
  menu: [] as unknown[],
  answers: { dialog: {} as object, invoke: "null", hasLock: true },
};

const note = (name: string, ...given: unknown[]): void => {
  record.calls.push([name, ...given]);
};

class FakeContents extends EventEmitter {
  session = session.defaultSession;
  setWindowOpenHandler(handler: Handler): void {
    record.guards.windowOpen = handler;
  }
  reload(): void {
    note("reload");
  }
  forcefullyCrashRenderer(): void {
    note("crash");
  }
}

/** A window that shows nothing. */
export class FakeWindow extends EventEmitter {
  readonly options: { readonly webPreferences: Record<string, unknown> } & Record<string, unknown>;
  readonly webContents = new FakeContents();
  isGone = false;
  constructor(options: FakeWindow["options"]) {
    super();
    this.options = options;
    record.windows.push(this);
    note("window");
    app.emit("web-contents-created", {}, this.webContents);
  }
  loadURL(address: string): Promise<void> {
    note("load", address);
    this.emit("ready-to-show");
    return Promise.resolve();
  }
  show = (): void => note("show");
  hide = (): void => note("hide");
  focus = (): void => note("focus");
  maximize = (): void => note("maximize");
  isMinimized = (): boolean => false;
  isMaximized = (): boolean => true;
  isDestroyed = (): boolean => this.isGone;
  isFullScreen = (): boolean => record.calls.findLast(([name]) => name === "full")?.[1] === true;
  setFullScreen = (isFull: boolean): void => note("full", isFull);
  getBounds = () => ({ x: 10, y: 20, width: 900, height: 700 });
  getNormalBounds = () => ({ x: 10, y: 20, width: 900, height: 700 });
  /** As a person closes it. */
  close(): boolean {
    let isPrevented = false;
    this.emit("close", {
      preventDefault: () => {
        isPrevented = true;
      },
    });
    if (!isPrevented) this.destroy();
    return isPrevented;
  }
  destroy(): void {
    this.isGone = true;
    this.emit("closed");
    app.emit("window-all-closed");
  }
}

/** The program as Electron sees it; a test says when it is ready. */
export const app = Object.assign(new EventEmitter(), {
  isPackaged: false,
  ready: Promise.withResolvers<void>(),
  whenReady: (): Promise<void> => app.ready.promise,
  enableSandbox: () => note("sandbox"),
  setPath: (name: string, path: string) => note("path", name, path),
  getPath: () => "/documents",
  getAppPath: () => "/program",
  getVersion: () => "1.2.3",
  requestSingleInstanceLock: (data: unknown) => {
    note("lock", data);
    return record.answers.hasLock;
  },
  quit: () => note("quit"),
  exit: (code: number) => note("exit", code),
});

const guard =
  (name: string) =>
  (handler: Handler): void => {
    record.guards[name] = handler;
  };

export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: guard("permissionRequest"),
    setPermissionCheckHandler: guard("permissionCheck"),
    setDevicePermissionHandler: guard("device"),
    setDisplayMediaRequestHandler: guard("display"),
    setSpellCheckerEnabled: (on: boolean) => note("spelling", on),
    webRequest: { onBeforeRequest: guard("request") },
  }),
};

export const protocol = {
  registerSchemesAsPrivileged: (schemes: unknown) => note("scheme", schemes),
  handle: (scheme: string, handler: Handler) => {
    note("serve", scheme);
    record.guards.serve = handler;
  },
};

export const ipcMain = {
  handle: (channel: string, handler: Handler) => {
    if (record.handlers.has(channel)) throw new Error(`a second handler for ${channel}`);
    record.handlers.set(channel, handler);
  },
};

export const ipcRenderer = {
  invoke: async (...given: unknown[]) => {
    record.invoked.push(given);
    return record.answers.invoke;
  },
};

export const contextBridge = {
  exposeInMainWorld: (name: string, api: Record<string, unknown>) => {
    record.exposed[name] = api;
  },
};

export const Menu = {
  buildFromTemplate: (template: unknown[]) => template,
  setApplicationMenu: (menu: unknown[]) => {
    record.menu = menu;
  },
};

const answered = async (...given: unknown[]): Promise<object> => {
  note("dialog", ...given);
  return record.answers.dialog;
};
export const dialog = {
  showMessageBox: answered,
  showSaveDialog: answered,
  showOpenDialog: answered,
  showErrorBox: (...given: unknown[]) => note("error", ...given),
};

const area = { x: 0, y: 0, width: 1920, height: 1080 };
/** The window stands on the first of them. */
export const displays = [{ id: 1, workArea: area, bounds: area }];
export const screen = { getAllDisplays: () => displays, getDisplayMatching: () => displays[0] };

export { FakeWindow as BrowserWindow };
