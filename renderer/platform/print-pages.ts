import type { PaperName } from "../../shared-model/answers/sheet-input.ts";

/** One page to print: an SVG that needs nothing from elsewhere, on its paper. */
export interface PageToPrint {
  readonly svg: string;
  readonly paper: PaperName;
  readonly isLandscape: boolean;
}

const CLASS = "print-pages";

let leave: (() => void) | undefined;

/**
 * Hands pages to the print dialog of the browser or of the desktop program: they stand beside the window, where only paper
 * shows them, each on paper of its own size and at its true scale.
 * @throws {Error} A page cannot be drawn, or there is no print dialog.
 */
export async function printPages(pages: readonly PageToPrint[]): Promise<void> {
  leave?.();
  const host = document.createElement("div");
  host.className = CLASS;
  host.setAttribute("aria-hidden", "true");
  const addresses: string[] = [];
  const clear = (): void => {
    removeEventListener("afterprint", clear);
    host.remove();
    for (const address of addresses) URL.revokeObjectURL(address);
    if (leave === clear) leave = undefined;
  };
  leave = clear;
  try {
    document.body.append(host);
    for (const { svg, paper, isLandscape } of pages) {
      const image = new Image();
      const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
      addresses.push(address);
      image.className = `print-page ${paper}-${isLandscape ? "landscape" : "portrait"}`;
      image.alt = "";
      image.src = address;
      host.append(image);
    }
    await Promise.all([...host.querySelectorAll("img")].map((image) => image.decode()));
    // The dialog may outlive the call: what it prints stays until it says that it has ended.
    addEventListener("afterprint", clear);
    print();
  } catch (fault) {
    clear();
    throw fault;
  }
}
