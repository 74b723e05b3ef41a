import { Fragment, useCallback, useRef, useState } from "react";
import { placeTool } from "../../state/item-actions/place-tool.ts";
import { sessionStore, takeTool } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Glyph } from "../../ui/glyph.tsx";
import { useWantedFocus } from "../use-wanted-focus.ts";
import { findInStock, notInStock, type StockGroup, type StockItem, stockGroups } from "./stock-groups.ts";
import { wording } from "./words.ts";

/** How many of a group show before it is asked for more. */
const FIRST = 6;

/** What can be placed. Drag an item to the sheet, or press it and then press the sheet. */
export function Stock() {
  const [words, setWords] = useState("");
  const search = useRef<HTMLInputElement>(null);
  useWantedFocus(
    "stock",
    useCallback(() => search.current?.focus(), []),
  );
  const found = stockGroups.map((group) => ({ group, items: findInStock(group.items, words) }));
  const count = found.reduce((sum, { items }) => sum + items.length, 0);
  return (
    <>
      <div className="stock-search">
        <input
          className="field"
          type="search"
          placeholder={wording.findInStock}
          aria-label={wording.findInStock}
          ref={search}
          value={words}
          onChange={({ target }) => setWords(target.value)}
        />
        <span role="status" className="unseen">
          {words === "" ? "" : wording.found(count)}
        </span>
      </div>
      <div className="stock-list">
        {found.map(({ group, items }) =>
          items.length === 0 ? null : <Group key={group.title} group={group} items={items} searching={words !== ""} />,
        )}
        {count === 0 && <p className="empty">{notInStock(words)}</p>}
      </div>
    </>
  );
}

function Group({
  group,
  items,
  searching,
}: {
  readonly group: StockGroup;
  readonly items: readonly StockItem[];
  readonly searching: boolean;
}) {
  const [whole, setWhole] = useState(false);
  const shown = whole || searching ? items : items.slice(0, FIRST);
  const rest = items.length - shown.length;
  return (
    <section className="stock-group">
      <h2 className="stock-kind">
        <span>{group.title}</span>
        <span className="fig">{items.length}</span>
      </h2>
      <ul>
        {shown.map((item) => (
          <li key={item.tool.id}>
            <Item item={item} hint={group.hint} />
          </li>
        ))}
      </ul>
      {!searching && items.length > FIRST && (
        <button type="button" className="link stock-more" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? wording.fewer : wording.more(rest)}
          <span className="unseen">{wording.ofWord(group.title.toLowerCase())}</span>
        </button>
      )}
    </section>
  );
}

function Item({ item, hint }: { readonly item: StockItem; readonly hint: string }) {
  const { tool, title, figure, glyph } = item;
  const inHand = useStore(sessionStore, ({ tool: held }) => held?.kind === tool.kind && held.id === tool.id);
  return (
    <>
      <button
        type="button"
        className="stock-item"
        aria-pressed={inHand}
        draggable
        onClick={() => takeTool(inHand ? undefined : tool)}
        onDragStart={({ dataTransfer }) => {
          // Other programs get the words; the sheet of this window looks at the hand.
          dataTransfer.setData("text/plain", title);
          dataTransfer.effectAllowed = "copy";
          takeTool(tool);
        }}
        onDragEnd={({ dataTransfer }) => {
          // What the sheet took is placed, or stays in the hand for the press that is asked for next.
          if (dataTransfer.dropEffect === "none" && sessionStore.get().routeFrom === undefined) takeTool(undefined);
        }}
      >
        <Glyph id={glyph} size={22} />
        <span className="stock-title">
          {wordsOf(title).map(({ key, word, gap }) => (
            <Fragment key={key}>
              {gap}
              <span className="whole-word">{word}</span>
            </Fragment>
          ))}
        </span>
        <span className="stock-figure fig">{figure}</span>
      </button>
      {inHand && (
        <div className="stock-hint">
          <p role="status">{wording.escapePutsItBack(hint)}</p>
          <button type="button" className="button small" onClick={() => placeTool(tool)}>
            {tool.kind === "enclosure" ? wording.putItOnAFreePlace : wording.chooseWhere}
          </button>
        </div>
      )}
    </>
  );
}

/** Words of a title with the gap before each: a line breaks between them only. */
const wordsOf = (title: string) =>
  title.split(" ").map((word, place) => ({ key: `${place} ${word}`, word, gap: place === 0 ? "" : " " }));
