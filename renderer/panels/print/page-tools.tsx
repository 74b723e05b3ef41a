import { useId } from "react";
import { pictureSize } from "../../platform/page-picture.ts";
import { savePdf, savePicture, saveTable, saveWorkbook } from "../../state/print/copies.ts";
import { printStore } from "../../state/print/print-store.ts";
import { showPage } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { MenuItem, MenuLine, WordMenu } from "../../ui/word-menu.tsx";
import { wording } from "./words.ts";
import { stepped, ZOOM_STEPS, type Zoom, zoomOfScale } from "./zoom.ts";

interface Props {
  readonly zoom: Zoom;
  /** Points for each millimetre. */
  readonly scale: number;
  readonly onZoom: (zoom: Zoom) => void;
}

/** Above the page: which one, how large, and what it can be saved as. */
export function PageTools({ zoom, scale, onZoom }: Props) {
  return (
    <div className="print-tools">
      <PageStepper />
      <ZoomChoice zoom={zoom} scale={scale} onZoom={onZoom} />
      <SaveMenu />
    </div>
  );
}

function PageStepper() {
  const id = useId();
  const pages = useStore(printStore, ({ laid }) => laid?.pages.length ?? 0);
  const page = useStore(printStore, (state) => state.page);
  return (
    <div className="print-stepper">
      <button type="button" className="button small" aria-disabled={page === 0} onClick={() => showPage(page - 1)}>
        {wording.previous}
      </button>
      <label htmlFor={id}>{wording.page}</label>
      <input
        key={page}
        id={id}
        type="number"
        className="field small fig"
        min={1}
        max={Math.max(1, pages)}
        defaultValue={page + 1}
        onChange={({ target }) => target.value !== "" && showPage(Number(target.value) - 1)}
      />
      <span className="fig">{wording.ofPages(pages)}</span>
      <button
        type="button"
        className="button small"
        aria-disabled={page + 1 >= pages}
        onClick={() => showPage(page + 1)}
      >
        {wording.next}
      </button>
    </div>
  );
}

function ZoomChoice({ zoom, scale, onZoom }: Props) {
  const percent = Math.round(zoomOfScale(scale) * 100);
  const isStep = typeof zoom !== "number" || ZOOM_STEPS.includes(zoom);
  return (
    <div className="print-zoom">
      <button type="button" className="button small" onClick={() => onZoom(stepped(scale, -1))}>
        {wording.farther}
      </button>
      <select
        className="field small"
        aria-label={wording.zoom}
        value={String(zoom)}
        onChange={({ target }) => {
          const { value } = target;
          onZoom(value === "page" || value === "width" ? value : Number(value));
        }}
      >
        <option value="page">{wording.wholePage}</option>
        <option value="width">{wording.pageWidth}</option>
        {ZOOM_STEPS.map((step) => (
          <option key={step} value={step}>
            {wording.percent(step * 100)}
          </option>
        ))}
        {!isStep && <option value={zoom}>{wording.percent(percent)}</option>}
      </select>
      <button type="button" className="button small" onClick={() => onZoom(stepped(scale, 1))}>
        {wording.nearer}
      </button>
    </div>
  );
}

const SCALES = [1, 2, 3, 4] as const;

/** Files of the sheet whose page is shown, and of that page alone. */
function SaveMenu() {
  const laid = useStore(printStore, (state) => state.laid);
  const page = useStore(printStore, (state) => state.page);
  const isBusy = useStore(printStore, ({ work }) => work !== undefined);
  const shown = laid?.pages[page];
  if (laid === undefined || shown === undefined) return null;
  const { sheet, width, height } = shown;
  return (
    <WordMenu word={wording.saveThisSheet}>
      <MenuItem disabled={isBusy} onChoose={() => savePdf(sheet)}>
        {wording.sheetAsPdf}
      </MenuItem>
      {laid.sheets[sheet]?.hasList && (
        <>
          <MenuItem disabled={isBusy} onChoose={() => saveTable(sheet)}>
            {wording.listCsv}
          </MenuItem>
          <MenuItem disabled={isBusy} onChoose={() => saveWorkbook(sheet)}>
            {wording.listXlsx}
          </MenuItem>
        </>
      )}
      <MenuLine />
      <MenuItem disabled={isBusy} onChoose={() => savePicture("svg")}>
        {wording.pageAsSvg}
      </MenuItem>
      {SCALES.map((scale) => {
        const size = pictureSize(width, height, scale);
        return (
          <MenuItem key={scale} disabled={isBusy} onChoose={() => savePicture("png", scale)}>
            {wording.pageAsPng(scale, size.width, size.height)}
          </MenuItem>
        );
      })}
    </WordMenu>
  );
}
