/** What a style sheet says of a line or a letter, as attributes that stand by themselves. */
const PROPERTIES = [
  ...["fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray"],
  ...["stroke-linecap", "stroke-linejoin", "opacity", "font-family", "font-size", "font-weight"],
  ...["text-anchor", "letter-spacing", "paint-order"],
] as const;

const KEPT: ReadonlySet<string> = new Set([
  ...["svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan", "defs"],
  ...["pattern", "clipPath", "symbol", "use"],
]);

/**
 * An svg of the page as a text that needs nothing of the page: styles become attributes, patterns and signs that it refers
 * to come along, and classes, names for readers and everything that is not drawn stay behind.
 * @param around Where what it refers to is looked for first: the same id may stand elsewhere in the page, in other colours.
 */
export function selfContained(svg: SVGSVGElement, around: ParentNode): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  bare(svg, copy);
  const defs = document.createElementNS("http://www.w3.org/2000/svg", "defs");
  for (const id of referred(copy)) {
    const found = around.querySelector(`#${CSS.escape(id)}`) ?? document.getElementById(id);
    if (found === null || copy.querySelector(`#${CSS.escape(id)}`) !== null) continue;
    const part = found.cloneNode(true) as Element;
    bare(found, part);
    defs.append(part);
  }
  copy.prepend(defs);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  return new XMLSerializer().serializeToString(copy);
}

/** Ids that attributes refer to. */
function referred(root: Element): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const element of [root, ...root.querySelectorAll("*")])
    for (const { value } of element.attributes) {
      const [, id] = /url\(["']?#([^"')]+)["']?\)/.exec(value) ?? [];
      if (id !== undefined) ids.add(id);
    }
  return ids;
}

/** Takes over how the original looks; children that are not drawn go. */
function bare(original: Element, copy: Element): void {
  const children = [...original.children].map((child, i) => [child, copy.children[i]] as const);
  for (const [child, twin] of children) {
    if (twin === undefined) continue;
    if (!KEPT.has(child.localName) || getComputedStyle(child).display === "none") twin.remove();
    else bare(child, twin);
  }
  // Another program has other letters: they take the room that these have.
  if (original instanceof SVGTextContentElement && original.localName === "text") {
    const long = original.getComputedTextLength();
    if (long > 0) {
      copy.setAttribute("textLength", long.toFixed(1));
      copy.setAttribute("lengthAdjust", "spacingAndGlyphs");
    }
  }
  const style = getComputedStyle(original);
  for (const { name } of [...copy.attributes])
    if (/^(class|style|role|tabindex|data-|aria-)/.test(name)) copy.removeAttribute(name);
  for (const property of PROPERTIES) {
    const value = style.getPropertyValue(property);
    if (value !== "" && value !== "none" && value !== "normal") copy.setAttribute(property, value);
    else if (property === "fill" || property === "stroke") copy.setAttribute(property, value || "none");
  }
}
