/** Fingers and a pen: touch and pen events as a system sends them, to what lies at a point of the window. */
import type { CDPSession, Locator, Page } from "@playwright/test";

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export async function middleOf(locator: Locator): Promise<Spot> {
  const area = await locator.boundingBox();
  if (area === null) throw new Error(`Not in view: ${locator}`);
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}

export class Fingers {
  readonly page: Page;
  readonly #session: CDPSession;

  private constructor(page: Page, session: CDPSession) {
    this.page = page;
    this.#session = session;
  }

  static async of(page: Page): Promise<Fingers> {
    return new Fingers(page, await page.context().newCDPSession(page));
  }

  /** All fingers that are down then. */
  async touch(type: "touchStart" | "touchMove" | "touchEnd" | "touchCancel", ...spots: readonly Spot[]): Promise<void> {
    await this.#session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
    });
  }

  async tap(on: Locator | Spot): Promise<void> {
    if ("click" in on) await on.scrollIntoViewIfNeeded();
    const spot = "click" in on ? await middleOf(on) : on;
    await this.touch("touchStart", spot);
    await this.touch("touchEnd");
  }

  /** Rests on a thing until its menu has come, then lets go. */
  async hold(on: Locator | Spot): Promise<void> {
    await this.touch("touchStart", "click" in on ? await middleOf(on) : on);
    await this.page.getByRole("menu").waitFor();
    await this.touch("touchEnd");
  }

  /** Goes from one place to another without letting go. */
  async go(from: Spot, to: Spot, steps = 6): Promise<void> {
    for (let step = 1; step <= steps; step += 1)
      await this.touch("touchMove", {
        x: from.x + ((to.x - from.x) * step) / steps,
        y: from.y + ((to.y - from.y) * step) / steps,
      });
  }

  async drag(from: Spot, to: Spot): Promise<void> {
    await this.touch("touchStart", from);
    await this.go(from, to);
    await this.touch("touchEnd");
  }

  async pen(type: "mousePressed" | "mouseMoved" | "mouseReleased", { x, y }: Spot, pressed: boolean): Promise<void> {
    await this.#session.send("Input.dispatchMouseEvent", {
      type,
      x,
      y,
      button: type === "mouseMoved" && !pressed ? "none" : "left",
      buttons: pressed ? 1 : 0,
      clickCount: 1,
      pointerType: "pen",
    });
  }
}
