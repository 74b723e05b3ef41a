import { Suspense, useState } from "react";
import { newDocument } from "../../state/document-store.ts";
import { files } from "../../state/files.ts";
import { cableNames, FIRST_SEEN, makeBox } from "../../state/new-box-form.ts";
import { keepStart } from "../../state/start.ts";
import type { BoxPicture } from "./box-picture-type.ts";
import { Fill } from "./fill.tsx";
import { MakeButton, MakeNote } from "./make-button.tsx";
import { SeenForm } from "./seen-form.tsx";
import { useTriedBox } from "./use-tried-box.ts";
import { wording } from "./words.ts";

const EMPTY = newDocument().project;

/** A drawing of its own, begun with one box as somebody sees it. */
export default function NewBox({ picture: Picture }: { readonly picture: BoxPicture }) {
  const [seen, setSeen] = useState(FIRST_SEEN);
  const { box, why, fill, panel } = useTriedBox(seen, "new-drawing");
  const [making, setMaking] = useState(false);
  const make = async (): Promise<void> => {
    setMaking(true);
    try {
      // The form is seen until the box is: its panel may be waited for.
      if (await keepStart(() => files.takeOver(newDocument()))) await makeBox(seen);
    } finally {
      setMaking(false);
    }
  };
  return (
    <form
      className="new-box"
      onSubmit={(event) => {
        event.preventDefault();
        if (!making) make();
      }}
    >
      <h2 className="start-title">{wording.newFromWhatISee}</h2>
      <SeenForm
        seen={seen}
        onChange={setSeen}
        into="new-drawing"
        cables={cableNames(EMPTY, box)}
        name="B1"
        panel={panel}
      />
      <div className="start-row">
        <MakeButton words={wording.startAsFound} making={making} disabled={box === undefined} />
        <MakeNote making={making} />
      </div>
      {why !== undefined && <p className="refused">{why}</p>}
      <Fill fill={fill} />
      {box !== undefined && (
        <Suspense fallback={null}>
          <div className="start-picture">
            <Picture project={box.project} state={box.state} id={box.id} />
          </div>
        </Suspense>
      )}
    </form>
  );
}
