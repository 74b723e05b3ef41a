import { useCallback, useRef } from "react";
import { documentStore } from "../../state/document-store.ts";
import { addEnclosure } from "../../state/item-actions/enclosure-actions.ts";
import { nameable } from "../../state/item-actions/nameable.ts";
import { isSame, selectable } from "../../state/item-actions/subject.ts";
import { goTo, sessionStore, toggleSelected } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { type Choosing, Tree, type TreeHandle } from "../../ui/tree.tsx";
import { heirOf, indexOfRow } from "../../ui/tree-rows.ts";
import { Refused } from "../refused.tsx";
import { useWantedFocus } from "../use-wanted-focus.ts";
import type { FindingCount } from "./finding-counts.ts";
import { removeSubject } from "./outline-edits.ts";
import { OutlineMenu } from "./outline-menu.tsx";
import type { OutlineRow } from "./outline-rows.ts";
import { outlineStore, setOpen } from "./outline-store.ts";
import { foundWords, RowContent } from "./row-content.tsx";
import { useOutline } from "./use-outline.ts";
import { wording } from "./words.ts";

/** The drawing as a tree, twin of the sheet: everything in it can be reached, selected and edited here. */
export default function Outline() {
  const { rows, active, counts } = useOutline();
  const { renaming, menu, refusal } = useStore(outlineStore, (outline) => outline);
  const selection = useStore(sessionStore, (session) => session.selection);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const tree = useRef<TreeHandle>(null);
  const begin = useRef<HTMLButtonElement>(null);
  const backToTree = useCallback(() => (tree.current ?? begin.current)?.focus(), []);
  useWantedFocus("outline", backToTree);

  const isSelected = ({ node }: OutlineRow): boolean => {
    const own = selectable(node.subject);
    return own !== undefined && selection.some((item) => isSame(item, own));
  };
  const countOf = ({ node: { subject } }: OutlineRow): FindingCount | undefined => {
    if (subject.kind === "terminal") return counts.get(`terminal ${subject.device}.${subject.id}`);
    return "id" in subject ? counts.get(`${subject.kind} ${subject.id}`) : undefined;
  };
  const openMenu = ({ key }: OutlineRow, at: { readonly x: number; readonly y: number }): void =>
    outlineStore.merge({ menu: { key, ...at }, active: key });
  const choose = (row: OutlineRow, how: Choosing): void => {
    const own = selectable(row.node.subject);
    outlineStore.merge({ refusal: undefined });
    if (own === undefined) {
      if (row.open !== undefined) setOpen([row.key], !row.open);
    } else if (how === "also") toggleSelected(own);
    else goTo(own, "details");
  };
  const rename = (row: OutlineRow): void => {
    const can = nameable(row.node.subject, row.node.name) !== undefined;
    outlineStore.merge(
      can ? { renaming: row.key, refusal: undefined } : { refusal: wording.hasNoNameOfItsOwn(row.node.name) },
    );
  };
  const renamed = (row: OutlineRow, text: string | undefined): void => {
    // Leaving the field after Enter says the same once more.
    if (outlineStore.get().renaming !== row.key) return;
    const field = nameable(row.node.subject, row.node.name);
    const done = text === undefined || text === field?.value ? undefined : field?.rename(text);
    outlineStore.merge({
      renaming: undefined,
      refusal: done !== undefined && !done.ok ? done.refusal.message : undefined,
    });
    backToTree();
  };
  const remove = (row: OutlineRow): void => {
    const heir = heirOf(rows, row.key);
    const done = removeSubject(row.node.subject);
    outlineStore.merge(done.ok ? { active: heir, refusal: undefined } : { refusal: done.refusal.message });
  };
  const openLike = (key: string): void => {
    const parent = rows[indexOfRow(rows, key)]?.parent;
    setOpen(
      rows.filter((row) => row.parent === parent && row.open !== undefined).map((row) => row.key),
      true,
    );
  };
  const menuRow = menu && rows[indexOfRow(rows, menu.key)];
  return (
    <div className="outline">
      <div className="outline-bar">
        {!readOnly && (
          <button ref={begin} type="button" className="button small" onClick={addEnclosure}>
            {wording.addABoxOrPanel}
          </button>
        )}
        <button type="button" className="button small" onClick={() => outlineStore.merge({ open: new Set() })}>
          {wording.closeAll}
        </button>
      </div>
      {rows.length === 0 ? (
        <p className="empty">{wording.nothingIsDrawnYetBeginWith}</p>
      ) : (
        <Tree
          ref={tree}
          label={wording.outlineOfTheDrawing}
          rows={rows}
          active={active}
          isSelected={isSelected}
          nameOf={(row) => spokenName(row, countOf(row))}
          onActive={(key) => outlineStore.merge({ active: key })}
          onOpen={(key, open) => setOpen([key], open)}
          onOpenLike={openLike}
          onChoose={choose}
          onMenu={openMenu}
          onRename={rename}
          onRemove={remove}
        >
          {(row) => (
            <RowContent
              row={row}
              found={countOf(row)}
              renaming={row.key === renaming ? nameable(row.node.subject, row.node.name) : undefined}
              onRenamed={(text) => renamed(row, text)}
              onMore={(at) => openMenu(row, at)}
            />
          )}
        </Tree>
      )}
      <div className="outline-foot">
        <Refused message={refusal} />
      </div>
      {menu !== undefined && menuRow !== undefined && (
        <OutlineMenu
          row={menuRow}
          at={menu}
          onRename={() => rename(menuRow)}
          onRemove={() => remove(menuRow)}
          onShow={() => choose(menuRow, "only")}
          onClose={() => {
            outlineStore.merge({ menu: undefined });
            backToTree();
          }}
        />
      )}
    </div>
  );
}

/** "B1, box, laundry; 3 findings, worst: violation". */
function spokenName({ node: { name, kind, note } }: OutlineRow, found: FindingCount | undefined): string {
  const words = [name, kind, note].filter((word, at, all) => word !== "" && all.indexOf(word) === at).join(", ");
  return found === undefined ? words : `${words}; ${foundWords(found)}`;
}
