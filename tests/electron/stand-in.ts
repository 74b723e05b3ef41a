/**
 * Stands in for the module `electron`, so that the compiled main process and preload run as they are, with pages of an
 * installed Chromium for windows.
 *
 * What it shows: which windows are made and how, that both ends of the contract speak to each other, what the protocol
 * serves, what dialogs and menus are asked for, and the order of closing and quitting. What it cannot show, and only
 * the real runtime can: that Electron starts; the sandbox and the isolated world (preload runs in the page's own); keys
 * of menus; native dialogs and menus; fuses; file associations; what a real crash of the page does.
 */
import { EventEmitter } from "node:events";
import { createServer, type Server } from "node:http";
import Module, { createRequire } from "node:module";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { Browser, BrowserContext, Page, Route } from "@playwright/test";
import { type Invoke, StandInWindow, type Surroundings, veto, type WindowOptions } from "./stand-in-window.ts";

type Serve = (request: { readonly url: string; readonly method: string }) => Response | Promise<Response>;
type Answer = { canceled: boolean; filePaths: string[]; filePath: string; response: number };

export interface MenuItem {
  readonly id?: string;
  readonly label?: string;
  readonly role?: string;
  readonly type?: string;
  readonly accelerator?: string;
  readonly registerAccelerator?: boolean;
  readonly submenu?: readonly MenuItem[];
  readonly click?: () => void;
}

export interface StandInOptions {
  readonly browser: Browser;
  /** The folder with the built `main`, `preload` and `window`. */
  readonly dist: string;
  /** Stands for the person's folders. */
  readonly home: string;
  /** What the program is started with, after its script. */
  readonly args?: readonly string[];
  readonly isPackaged?: boolean;
  /** False: the program runs already. */
  readonly isFirst?: boolean;
  /** Files that another start hands over before this one has its windows. */
  readonly handedOver?: readonly string[];
  /** What pages keep from earlier runs. */
  readonly stored?: Readonly<Record<string, string>>;
}

/** What the person and the operating system do, and what came of it. */
export class StandIn implements Surroundings {
  readonly app = Object.assign(new EventEmitter(), {
    isPackaged: false,
    name: "",
    sandboxed: false,
    recent: [] as string[],
    lock: undefined as unknown,
    hasQuit: false,
    exitStatus: undefined as number | undefined,
  });
  readonly windows: StandInWindow[] = [];
  /** Every dialog that was asked for. */
  readonly dialogs: { readonly kind: string; readonly options: Record<string, unknown> }[] = [];
  /** What the person answers, first things first. A dialog without an answer is a failure. */
  readonly answers: Partial<Answer>[] = [];
  readonly invokable = new Map<string, Invoke>();
  readonly permissions: Record<string, (...args: never[]) => unknown> = {};
  readonly session = new EventEmitter();
  /** Addresses of windows that pages wanted to open. */
  readonly denied: string[] = [];
  menu: readonly MenuItem[] = [];
  schemes: unknown;
  context!: BrowserContext;
  private server!: Server;
  private serve: Serve | undefined;
  private request: ((details: { url: string }, answer: (answer: { cancel: boolean }) => void) => void) | undefined;
  private address = "";
  private quits = false;

  private readonly options: StandInOptions;

  private constructor(options: StandInOptions) {
    this.options = options;
  }

  static async start(options: StandInOptions): Promise<StandIn> {
    const standIn = new StandIn(options);
    await standIn.prepare();
    standIn.load();
    return standIn;
  }

  /** The first window, once its page has started. */
  async page(index = 0): Promise<Page> {
    for (let waited = 0; waited < 200; waited += 1) {
      const page = this.windows[index]?.page;
      if (page !== undefined && page.url() !== "about:blank") return page;
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error("No window was opened.");
  }

  press(...labels: readonly string[]): void {
    let items = this.menu;
    let found: MenuItem | undefined;
    for (const label of labels) {
      found = items.find((item) => item.label === label);
      if (found === undefined) throw new Error(`There is no ${label} among ${items.map((item) => item.label)}.`);
      items = found.submenu ?? [];
    }
    found?.click?.();
  }

  /** Sends a request as a frame of that address would. */
  forge(channel: string, event: unknown, ...args: unknown[]): unknown {
    return this.invokable.get(channel)?.(event, ...args);
  }

  async end(): Promise<void> {
    await this.context.close();
    await new Promise((done) => this.server.close(done));
  }

  quit(): void {
    this.quits = true;
    this.app.emit("before-quit", veto({}));
    if (this.windows.length === 0) this.app.hasQuit = true;
    for (const window of [...this.windows]) if (this.quits) window.close();
  }

  private async prepare(): Promise<void> {
    this.server = createServer(async (request, response) => {
      const url = `app://window${request.url ?? "/"}`;
      const answer = await this.serve?.({ url, method: request.method ?? "GET" });
      response.writeHead(answer?.status ?? 500, Object.fromEntries(answer?.headers ?? []));
      response.end(Buffer.from((await answer?.arrayBuffer()) ?? new ArrayBuffer(0)));
    });
    await new Promise<void>((done) => this.server.listen(0, "127.0.0.1", done));
    this.address = `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
    this.context = await this.options.browser.newContext({ viewport: { width: 1440, height: 900 } });
    await this.context.addInitScript((stored) => {
      for (const [key, value] of Object.entries(stored)) localStorage.setItem(key, value);
    }, this.options.stored ?? {});
    await this.context.route("**/*", (route) => this.judge(route));
    this.context.on("page", async (page) => {
      if ((await page.opener()) === null) return;
      const window = this.windows.find(({ page: own }) => own !== undefined);
      if (window?.webContents.openHandler?.({ url: page.url() }).action === "deny") this.denied.push(page.url());
      await page.close();
    });
  }

  /** Whether the session lets a page load that address. */
  mayLoad(url: string): boolean {
    let stopped = false;
    this.request?.({ url }, ({ cancel }) => {
      stopped = cancel;
    });
    return !stopped;
  }

  private async judge(route: Route): Promise<void> {
    const may = this.mayLoad(this.asApp(route.request().url()));
    await (may ? route.continue() : route.abort("aborted")).catch(() => undefined);
  }

  asApp = (url: string): string => url.replace(this.address, "app://window");
  asHttp = (url: string): string => url.replace("app://window", this.address);

  private load(): void {
    const main = join(this.options.dist, "main", "main.cjs");
    const require = createRequire(main);
    delete require.cache[main];
    const electron = this.module();
    const loader = Module as unknown as { _load(name: string, ...rest: unknown[]): unknown };
    const load = loader._load;
    const argv = process.argv;
    loader._load = (name, ...rest) => (name === "electron" ? electron : load.call(Module, name, ...rest));
    process.argv = [process.execPath, main, ...(this.options.args ?? [])];
    try {
      require(main);
      const { handedOver: files, home } = this.options;
      if (files !== undefined) this.app.emit("second-instance", {}, [], home, { files });
    } finally {
      loader._load = load;
      process.argv = argv;
    }
  }

  private module(): object {
    const { home, isPackaged = false, isFirst = true } = this.options;
    const { app } = this;
    Object.assign(app, {
      isPackaged,
      setName: (name: string) => {
        app.name = name;
      },
      enableSandbox: () => {
        app.sandboxed = true;
      },
      getPath: (name: string) => join(home, name === "home" ? "" : name),
      requestSingleInstanceLock: (data: unknown) => {
        app.lock = structuredClone(data);
        return isFirst;
      },
      whenReady: () => Promise.resolve(),
      addRecentDocument: (path: string) => app.recent.push(path),
      clearRecentDocuments: () => app.recent.splice(0),
      exit: (status: number) => {
        app.exitStatus = status;
      },
      quit: () => this.quit(),
    });
    const ask = (kind: string) => async (_window: unknown, options: Record<string, unknown>) => {
      this.dialogs.push({ kind, options });
      const answer = this.answers.shift();
      if (answer === undefined) throw new Error(`Nobody answers the dialog ${kind}.`);
      return { canceled: false, filePaths: [], filePath: "", response: 0, ...answer };
    };
    const remember = (name: string) => (handler: (...args: never[]) => unknown) => {
      this.permissions[name] = handler;
    };
    const standIn = this;
    return {
      app,
      protocol: {
        registerSchemesAsPrivileged: (schemes: unknown) => {
          this.schemes = schemes;
        },
        handle: (_scheme: string, serve: Serve) => {
          this.serve = serve;
        },
      },
      session: {
        defaultSession: Object.assign(this.session, {
          setPermissionRequestHandler: remember("request"),
          setPermissionCheckHandler: remember("check"),
          setDevicePermissionHandler: remember("device"),
          webRequest: {
            onBeforeRequest: (judge: typeof this.request) => {
              this.request = judge;
            },
          },
        }),
      },
      ipcMain: {
        handle: (channel: string, invoke: Invoke) => {
          if (this.invokable.has(channel)) throw new Error(`${channel} is handled twice.`);
          this.invokable.set(channel, invoke);
        },
      },
      dialog: { showOpenDialog: ask("open"), showSaveDialog: ask("save"), showMessageBox: ask("message") },
      Menu: {
        buildFromTemplate: (template: readonly MenuItem[]) => template,
        setApplicationMenu: (menu: readonly MenuItem[]) => {
          this.menu = menu;
        },
      },
      BrowserWindow: class extends StandInWindow {
        constructor(options: WindowOptions) {
          super(standIn, options);
        }
      },
    };
  }

  opened(window: StandInWindow): void {
    this.windows.push(window);
  }

  closed(window: StandInWindow): void {
    this.windows.splice(this.windows.indexOf(window), 1);
    window.emit("closed");
    if (this.windows.length > 0) return;
    if (this.quits) this.app.hasQuit = true;
    else this.app.emit("window-all-closed");
  }

  stays(): void {
    this.quits = false;
  }
}
