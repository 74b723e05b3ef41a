import type { SignKind } from "../../../shared-model/geometry/sign-shapes.ts";
import { wording } from "./words.ts";

interface SignInk {
  readonly fill: string;
  readonly line: string;
  readonly letter: string;
}

/** Colours and face of the theme, as a canvas takes them. */
export interface FarInk {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly faint: string;
  readonly accent: string;
  readonly fresh: string;
  readonly track: string;
  readonly full: string;
  readonly over: string;
  readonly room: string;
  readonly roomEdge: string;
  readonly face: string;
  readonly signs: Readonly<Record<SignKind, SignInk>>;
}

/** Reads the tokens of the theme that an element is shown in; in forced colours they are those of the system. */
export function readInk(element: Element): FarInk {
  const style = getComputedStyle(element);
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  const sign = (name: string, line: string): SignInk => ({
    fill: token(`${name}-fill`),
    line: token(line),
    letter: token(`${name}-on`),
  });
  const paper = token("paper");
  const faint = token("ink-3");
  return {
    paper,
    ink: token("ink-1"),
    quiet: token("ink-2"),
    faint,
    accent: token("accent"),
    fresh: token("new"),
    track: token("fill-track"),
    full: token("fill-ok"),
    over: token("fill-over"),
    room: wording.colorMixInSrgb6(faint, paper),
    roomEdge: wording.colorMixInSrgb26(faint, paper),
    face: token("face"),
    signs: {
      danger: sign("danger", "danger-fill"),
      violation: sign("violation", "violation-fill"),
      caution: sign("caution", "caution"),
      advice: sign("advice", "advice"),
      unknown: sign("unknown", "unknown"),
    },
  };
}

/**
 * Calls when colours, face or the pixels of the screen change.
 * @returns Ends it.
 */
export function watchInk(changed: () => void): () => void {
  const theme = new MutationObserver(changed);
  theme.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme", "class"] });
  const forced = matchMedia("(forced-colors: active)");
  forced.addEventListener("change", changed);
  let pixels: MediaQueryList | undefined;
  const watchPixels = (): void => {
    pixels?.removeEventListener("change", onPixels);
    pixels = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    pixels.addEventListener("change", onPixels);
  };
  const onPixels = (): void => {
    watchPixels();
    changed();
  };
  watchPixels();
  let over = false;
  void document.fonts.ready.then(() => {
    if (!over) changed();
  });
  return () => {
    over = true;
    theme.disconnect();
    forced.removeEventListener("change", changed);
    pixels?.removeEventListener("change", onPixels);
  };
}
