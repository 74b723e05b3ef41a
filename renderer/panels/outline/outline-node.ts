import type { Colour } from "../../../shared-model/units/colour.ts";
import type { ActionSubject } from "../../state/item-actions/subject.ts";

/** One thing of the drawing where it stands in the outline. The same end stands under its cable and where it is landed. */
export interface OutlineNode {
  /** Keys of what it stands in, and its own, parted by "/": every place in the outline has its own. */
  readonly key: string;
  readonly subject: ActionSubject;
  /** What a person calls it; typing goes by it. */
  readonly name: string;
  /** What it is, in a word or two. */
  readonly kind: string;
  /** Where it is or who is there; empty when there is nothing to say. */
  readonly note: string;
  readonly glyph?: string;
  /** Of a conductor, as made. */
  readonly colour?: Colour;
  readonly hasChildren: boolean;
  /** Asked only when it is open. */
  readonly children: () => readonly OutlineNode[];
}

const NO_CHILDREN = (): readonly OutlineNode[] => [];

export const leaf = (node: Omit<OutlineNode, "hasChildren" | "children">): OutlineNode => ({
  ...node,
  hasChildren: false,
  children: NO_CHILDREN,
});

export const branch = (
  node: Omit<OutlineNode, "hasChildren" | "children">,
  children: readonly OutlineNode[],
): OutlineNode => ({ ...node, hasChildren: children.length > 0, children: () => children });
