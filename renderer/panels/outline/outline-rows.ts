import type { TreeRow } from "../../ui/tree-rows.ts";
import type { OutlineNode } from "./outline-node.ts";

/** One visible line of the outline. */
export interface OutlineRow extends TreeRow {
  readonly node: OutlineNode;
}

/** The visible rows: children follow what they stand in where that is open. */
export function visibleRows(nodes: readonly OutlineNode[], open: ReadonlySet<string>): readonly OutlineRow[] {
  const rows: OutlineRow[] = [];
  const add = (list: readonly OutlineNode[], level: number, parent: string | undefined): void => {
    list.forEach((node, at) => {
      const { key, name, hasChildren } = node;
      const isOpen = hasChildren && open.has(key);
      const row = { key, parent, level, position: at + 1, count: list.length, text: name };
      rows.push({ ...row, open: hasChildren ? isOpen : undefined, node });
      if (isOpen) add(node.children(), level + 1, key);
    });
  };
  add(nodes, 1, undefined);
  return rows;
}
