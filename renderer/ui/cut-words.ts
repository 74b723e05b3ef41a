/** An area of the window in pixels. */
export type Box = Pick<DOMRect, "left" | "top" | "right" | "bottom">;

/** How far from a shortened text of the drawing a pointer may be, and how far it may stand from what has the focus. */
const REACH = 5;
const BESIDE = 34;

/**
 * What stands shortened at an element of the window, in full, and where it stands; undefined where nothing is shortened,
 * or the element tells it itself.
 * @param at Where the pointer is; without it, the element has the focus.
 */
export function cutWordsAt(element: Element, at?: { readonly x: number; readonly y: number }) {
  if (element.closest("[data-target]") !== null || (at !== undefined && element.closest("[title]") !== null))
    return undefined;
  const told = element.closest<HTMLElement | SVGElement>("[data-full]");
  const words = told?.dataset.full;
  if (told != null && words !== undefined) return { words, near: nearBy(told, at) };
  const box = element.closest(".react-flow__node");
  if (box !== null) return onSheet(box, element, at);
  const cut = at === undefined ? cutWithin(element) : element.closest(CUT);
  return cut != null && isCut(cut) ? { words: textOf(cut), near: cut.getBoundingClientRect() } : undefined;
}

/** Lines that end in dots where they are too long. */
const CUT =
  ".outline-name, .outline-note, .menu-words, .command-title, .val, .sheet-title-value, .status-trouble, .survey-ticked, .print-line-title, .landing-place > .dim, .scope-say";

const cutWithin = (element: Element): Element | undefined =>
  [...(element.matches(CUT) ? [element] : []), ...element.querySelectorAll(CUT)].find(isCut);

const isCut = ({ scrollWidth, clientWidth }: Element): boolean => scrollWidth > clientWidth;

const textOf = ({ textContent }: Element): string => (textContent ?? "").trim();

/** A name that the drawing shortens, told by the full name of the thing it belongs to. */
function onSheet(box: Element, element: Element, at: { readonly x: number; readonly y: number } | undefined) {
  const item = element.closest("[aria-label]");
  const own = item !== null && box.contains(item) && item !== box ? item : undefined;
  const words = own?.getAttribute("aria-label") ?? box.querySelector("desc")?.textContent ?? "";
  if (words === "") return undefined;
  // From afar nothing but the name of a box is written, and that only where there is room for it.
  if (box.querySelector(".sheet-far") !== null) return { words, near: nearBy(box, at) };
  const place = at ?? undefined;
  const area = place === undefined ? grown((own ?? box).getBoundingClientRect(), BESIDE) : pointed(place);
  const isShort = [...box.querySelectorAll("text")].some(
    (text) => text.textContent?.endsWith("…") === true && meet(text.getBoundingClientRect(), area),
  );
  return isShort ? { words, near: nearBy(own ?? box, at) } : undefined;
}

const pointed = ({ x, y }: { readonly x: number; readonly y: number }): Box => ({
  left: x - REACH,
  top: y - REACH,
  right: x + REACH,
  bottom: y + REACH,
});

const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

const meet = (a: Box, b: Box): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;

/** Beside the pointer, else beside the thing. */
const nearBy = (element: Element, at: { readonly x: number; readonly y: number } | undefined): Box =>
  at === undefined
    ? element.getBoundingClientRect()
    : { left: at.x + 8, top: at.y - 8, right: at.x, bottom: at.y + 12 };
