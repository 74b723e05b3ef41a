import { EventEmitter } from "node:events";
import { readFileSync } from "node:fs";
import type { BrowserContext, Frame, Page, Route } from "@playwright/test";
import { asPageScript } from "./stand-in-preload.ts";

export interface Veto {
  readonly prevented: boolean;
  preventDefault(): void;
}

/** An event that can be told not to happen. */
export function veto<T extends object>(details: T): T & Veto {
  let prevented = false;
  const preventDefault = () => {
    prevented = true;
  };
  return Object.defineProperty({ ...details, preventDefault }, "prevented", { get: () => prevented }) as T & Veto;
}

export type Invoke = (event: unknown, ...args: unknown[]) => unknown;

/** What a window needs of the stand-in around it. */
export interface Surroundings {
  readonly context: BrowserContext;
  /** Handlers of the main process by channel. */
  readonly invokable: ReadonlyMap<string, Invoke>;
  /** An address as the program knows it, and as the browser does. */
  asApp(url: string): string;
  asHttp(url: string): string;
  opened(window: StandInWindow): void;
  closed(window: StandInWindow): void;
  /** A window did not close: quitting ends there. */
  stays(): void;
}

export interface WindowOptions {
  readonly webPreferences: { readonly preload: string } & Record<string, unknown>;
}

let lastId = 0;

/** Stands in for BrowserWindow: a page of its own. */
export class StandInWindow extends EventEmitter {
  page: Page | undefined;
  loaded = false;
  edited = false;
  represented = "";
  isShown = false;
  private destroyed = false;
  readonly webContents: WebContents;

  readonly standIn: Surroundings;
  readonly options: WindowOptions;

  constructor(standIn: Surroundings, options: WindowOptions) {
    super();
    this.standIn = standIn;
    this.options = options;
    this.webContents = new WebContents(this);
    standIn.opened(this);
  }

  async loadURL(url: string): Promise<void> {
    const page = await this.standIn.context.newPage();
    await page.exposeBinding("__invoke", ({ frame }, channel: string, args: unknown[]) =>
      this.invoke(frame, channel, args),
    );
    await page.addInitScript(asPageScript(readFileSync(this.options.webPreferences.preload, "utf8")));
    page.on("crash", () => this.webContents.emit("render-process-gone", {}, { reason: "crashed" }));
    page.on("dialog", async (dialog) => {
      const event = veto({});
      if (dialog.type() === "beforeunload") this.webContents.emit("will-prevent-unload", event);
      await (event.prevented ? dialog.accept() : dialog.dismiss());
      if (!event.prevented) this.standIn.stays();
    });
    page.on("close", () => this.gone());
    await page.route("**/*", (route) => this.judge(route));
    this.page = page;
    await page.goto(this.standIn.asHttp(url));
    this.loaded = true;
    this.emit("focus");
    this.emit("ready-to-show");
  }

  /** Where a page wants to go, once it is there, is asked of the window before the session is. */
  private async judge(route: Route): Promise<void> {
    const request = route.request();
    if (!this.loaded || !request.isNavigationRequest()) return route.fallback();
    const url = this.standIn.asApp(request.url());
    const event = veto({ url, isMainFrame: true });
    this.webContents.emit("will-navigate", event);
    if (event.prevented) return route.abort("aborted");
    this.webContents.emit("did-start-navigation", { url, isMainFrame: true, isSameDocument: false });
    await route.fallback();
  }

  private async invoke(frame: Frame, channel: string, args: readonly unknown[]): Promise<unknown> {
    const url = this.standIn.asApp(frame.url());
    const { mainFrame } = this.webContents;
    const senderFrame = frame === this.page?.mainFrame() ? Object.assign(mainFrame, { url }) : { url };
    const event = { sender: this.webContents, senderFrame };
    return structuredClone(await this.standIn.invokable.get(channel)?.(event, ...args));
  }

  close(): void {
    const event = veto({});
    this.emit("close", event);
    if (event.prevented) this.standIn.stays();
    else void this.page?.close({ runBeforeUnload: true });
  }

  destroy(): void {
    void this.page?.close();
  }

  private gone(): void {
    if (this.destroyed) return;
    this.destroyed = true;
    this.standIn.closed(this);
  }

  isDestroyed = (): boolean => this.destroyed;
  isMinimized = (): boolean => false;
  restore(): void {}
  show(): void {
    this.isShown = true;
  }
  focus(): void {
    this.emit("focus");
  }
  setDocumentEdited(edited: boolean): void {
    this.edited = edited;
  }
  setRepresentedFilename(path: string): void {
    this.represented = path;
  }
}

class WebContents extends EventEmitter {
  readonly id: number;
  readonly mainFrame = { url: "" };
  openHandler: ((details: { url: string }) => { action: string }) | undefined;

  private readonly window: StandInWindow;

  constructor(window: StandInWindow) {
    super();
    this.window = window;
    lastId += 1;
    this.id = lastId;
  }

  getURL = (): string => this.window.standIn.asApp(this.window.page?.url() ?? "");

  send(channel: string, ...args: unknown[]): void {
    const cloned = structuredClone(args);
    this.window.page
      ?.evaluate(([name, sent]) => Reflect.get(globalThis, "__deliver")(name, sent), [channel, cloned] as const)
      .catch(() => undefined);
  }

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }

  reload(): void {
    void this.window.page?.reload().catch(() => undefined);
  }

  forcefullyCrashRenderer(): void {
    this.emit("render-process-gone", {}, { reason: "killed" });
  }
}
