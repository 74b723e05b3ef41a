/**
 * The ring around what has the focus is as wide on the screen wherever the sheet is seen from: an element of the drawing
 * is told how many of its own units are a pixel.
 */
export function fitRing(element: Element): void {
  const inner = element.matches(".react-flow__node") ? element.querySelector(".sheet-wall-outer") : element;
  const size = inner instanceof SVGGraphicsElement ? inner.getScreenCTM()?.a : undefined;
  if (size === undefined || size <= 0 || !(element instanceof HTMLElement || element instanceof SVGElement)) return;
  element.style.setProperty("--px", `${1 / size}px`);
}
