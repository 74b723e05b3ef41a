import { useState } from "react";
import type { Energised, MeterVolts, OutletTested } from "../../../shared-model/answers/energised.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { OutletKey } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { energiseStore, readTester } from "../../state/energise/energise-store.ts";
import { voltWords } from "../../state/energise/energise-words.ts";
import { doNow } from "../../state/energise/energising.ts";
import { chooseOutlet, noteTester } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** One outlet: the plug-in tester and its button, and a leak. */
export function OutletPart({ answer }: { readonly answer: Energised }) {
  const outlet = useStore(energiseStore, (state) => state.outlet);
  const isRead = useStore(energiseStore, (state) => readTester(state) !== undefined);
  const installation = useStore(documentStore, installationOf);
  const outlets = outletsIn(installation);
  if (outlets.length === 0) return null;
  return (
    <Section title={wording.atAnOutlet} note={wording.testerLeak}>
      <div className="part-body">
        <select
          className="field"
          aria-label={wording.outletToTest}
          value={outlet ?? ""}
          onChange={({ target }) => chooseOutlet(target.value === "" ? undefined : (target.value as OutletKey))}
        >
          <option value="">{wording.chooseAnOutlet}</option>
          {outlets.map(({ key, name, box }) => (
            <option key={key} value={key}>
              {`${name}, in ${box}`}
            </option>
          ))}
        </select>
      </div>
      {answer.outlet?.outlet === outlet && answer.outlet && (
        <Tested tested={answer.outlet} isRead={isRead} testMa={answer.instruments.testMa} />
      )}
      {answer.outlet?.outlet === outlet && answer.outlet && (
        <Leak outlet={answer.outlet.outlet} name={answer.outlet.name} />
      )}
    </Section>
  );
}

const outletsIn = ({ enclosures }: Installation) =>
  inOrder(enclosures).flatMap(({ name: box, devices }) =>
    inOrder<Device>(devices).flatMap((device) => outletsOf(device).map(({ key, name }) => ({ key, name, box }))),
  );

const LAMPS = [wording.hotToNeutral, wording.hotToGround, wording.neutralToGround] as const;

/** Where `isRead` is false something was changed that the readings do not tell of yet: they are not shown. */
function Tested({
  tested,
  isRead,
  testMa,
}: {
  readonly tested: OutletTested;
  readonly isRead: boolean;
  readonly testMa: number;
}) {
  const { hn, hg, ng, tester, outlet, name } = tested;
  const shown = (volts: MeterVolts): string => (isRead ? voltWords(volts) : "--");
  return (
    <div className="energise-tested">
      {tester === undefined ? (
        <p className="energise-condition" role="status">
          {wording.noGroundContactAPlugIn}
        </p>
      ) : (
        <>
          <p className="energise-condition" role="status">
            <span className="energise-lamps" aria-hidden="true">
              {tester.lit.map((lit, lamp) => (
                <span key={LAMPS[lamp]} className={lit && isRead ? "energise-lamp lit" : "energise-lamp"} />
              ))}
            </span>
            {wording.plugInTester}
            <strong>{isRead ? tester.title : "--"}</strong>
          </p>
          <p className="energise-note-line">{isRead && wording.aReadingFromATesterAlone(tester.mayBe.join("; "))}</p>
        </>
      )}
      <dl className="energise-volts">
        <dt>{wording.hotToNeutral2}</dt>
        <dd className="fig">{shown(hn)}</dd>
        {hg && <dt>{wording.hotToGround2}</dt>}
        {hg && <dd className="fig">{shown(hg)}</dd>}
        {ng && <dt>{wording.neutralToGround2}</dt>}
        {ng && <dd className="fig">{shown(ng)}</dd>}
      </dl>
      <div className="energise-buttons">
        <button type="button" className="button small" aria-disabled={!isRead} onClick={noteTester}>
          {wording.writeIntoTheLog}
        </button>
        {tester !== undefined && (
          <button
            type="button"
            className="button small"
            aria-label={wording.pressTheTesterSButtonAt(name)}
            onClick={() => doNow({ kind: "plug-in-button", outlet })}
          >
            {wording.testerSButtonMa(testMa.toFixed(0))}
          </button>
        )}
      </div>
    </div>
  );
}

const MOST_MA = 1000;

/** A leak from a contact of the outlet to ground outside. */
function Leak({ outlet, name }: { readonly outlet: OutletKey; readonly name: string }) {
  const [mA, setMa] = useState("6");
  const [contact, setContact] = useState<"hot" | "neutral">("hot");
  const amount = Number(mA.replace(",", "."));
  const possible = Number.isFinite(amount) && amount > 0 && amount <= MOST_MA;
  return (
    <div className="energise-leak">
      <label>
        {wording.leak}
        <input
          className="field small"
          inputMode="decimal"
          aria-label={wording.milliamperesOfTheLeak}
          aria-invalid={!possible}
          value={mA}
          onChange={({ target }) => setMa(target.value)}
        />{" "}
        {wording.ma}
      </label>
      <select
        className="field small"
        aria-label={wording.theLeakIsFrom}
        value={contact}
        onChange={({ target }) => setContact(target.value === "neutral" ? "neutral" : "hot")}
      >
        <option value="hot">{wording.fromHot}</option>
        <option value="neutral">{wording.fromNeutral}</option>
      </select>
      <button
        type="button"
        className="button small"
        aria-label={wording.leakToGroundOutsideAt(name)}
        disabled={!possible}
        onClick={() => doNow({ kind: "leak", outlet, contact, mA: amount })}
      >
        {wording.leak2}
      </button>
      {!possible && <p className="refused">{wording.giveMoreThan0AndAt(MOST_MA)}</p>}
    </div>
  );
}
