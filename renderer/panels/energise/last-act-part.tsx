import type {
  ActDone,
  DeviceSaid,
  Energised,
  NamedOutlet,
  StillLive,
} from "../../../shared-model/answers/energised.ts";
import { parseOutlet } from "../../../shared-model/model/ids.ts";
import { energiseStore, type LastAct } from "../../state/energise/energise-store.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { whenWords } from "../../state/when-words.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** It scrolls, so keys have to get into it where nothing in it is pressed. */
const SCROLLS = { tabIndex: 0 } as const;

/**
 * What was done last and what followed; else what opened by itself and what is live all the same. It has the same height
 * whatever it says: TEST and RESET below stay under the hand.
 */
export function LastActPart({ answer }: { readonly answer: Energised }) {
  const last = useStore(energiseStore, (state) => state.last);
  const terminals = answer.liveTerminals;
  const others = last === undefined ? answer.mayOpen : [];
  const isSilent = last === undefined && others.length === 0 && terminals.length === 0 && answer.liveAfter.length === 0;
  return (
    <section className="energise-follows" aria-label={wording.whatFollows} {...SCROLLS}>
      {isSilent && (
        <Section title={wording.whatFollows}>
          <div className="part-body">
            <p className="energise-note-line">{wording.pressAndSeeWhatFollows}</p>
          </div>
        </Section>
      )}
      {last !== undefined && <Done last={last} />}
      {others.length > 0 && (
        <Section title={wording.mayOpen}>
          <div className="part-body">
            <Sentences said={others} />
          </div>
        </Section>
      )}
      {last === undefined && answer.liveAfter.length > 0 && (
        <Section title={wording.liveThoughADeviceHasOpened} note={answer.liveAfter.length}>
          <LiveList list={answer.liveAfter} />
        </Section>
      )}
      {terminals.length > 0 && (
        <Section title={wording.loadLiveThoughOpen} note={terminals.length}>
          <ul className="energise-list">
            {terminals.map(({ device, name, terminal, volts }) => (
              <li key={`${device} ${terminal}`}>
                <Tag letter="L" kind="live" /> <strong>{name}</strong>
                {wording.vToGround(terminal.replace("_", " "), volts.toFixed(0))}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </section>
  );
}

function Done({ last }: { readonly last: LastAct }) {
  const { done, opened, mayOpen, otherwise } = last;
  return (
    <Section title={last.title} note={whenWords(last.at)}>
      <div className="part-body" role="status">
        {done.impossible !== undefined && <p className="energise-note-line">{done.impossible}</p>}
        {done.impossible === undefined && <p className="energise-outcome">{outcomeOf(last)}</p>}
        <Sentences said={opened.length > 0 ? opened : mayOpen.length > 0 ? mayOpen : done.devices} />
        {otherwise.map((sentence) => (
          <p key={sentence} className="energise-note-line">
            {sentence}
          </p>
        ))}
      </div>
      <Outlets title={wording.cameOn} letter="L" kind="live" list={done.cameOn} />
      <Outlets title={wording.wentDark} letter="0" kind="dead" list={done.wentDark} />
      {done.offButLive.length > 0 && (
        <Part title={wording.noVoltsAcrossButLiveTo} count={done.offButLive.length}>
          <LiveList list={done.offButLive} />
        </Part>
      )}
      <Outlets title={wording.stayedOn} letter="L" kind="live" list={done.stayedOn} />
      <Raised raised={done.raised} />
    </Section>
  );
}

function outcomeOf({ act, done, opened }: LastAct): string {
  if (opened.length > 0) return wording.opened(opened.map(({ name }) => name).join(", "));
  if (act.kind !== "reset") return wording.nothingOpened;
  return done.holds ? wording.itIsClosed : wording.itStaysOpen;
}

function Raised({ raised }: Pick<ActDone, "raised">) {
  if (raised.length === 0) return null;
  return (
    <Part title={wording.metalThatTheButtonBroughtTo} count={raised.length}>
      <LiveList list={raised} />
      <p className="energise-note-line">{wording.pressingAPlugInTesterWhere}</p>
    </Part>
  );
}

const Sentences = ({ said }: { readonly said: readonly DeviceSaid[] }) =>
  said.map(({ device, name, why }) => (
    <p key={device} className="energise-note-line">
      {`${name}: ${why}`}
    </p>
  ));

function Part({
  title,
  count,
  children,
}: {
  readonly title: string;
  readonly count: number;
  readonly children: React.ReactNode;
}) {
  return (
    <div className="energise-part">
      <h4>
        <span>{title}</span>
        <small className="fig">{count}</small>
      </h4>
      {children}
    </div>
  );
}

interface OutletsProps {
  readonly title: string;
  readonly letter: string;
  readonly kind: string;
  readonly list: readonly NamedOutlet[];
}

function Outlets({ title, letter, kind, list }: OutletsProps) {
  if (list.length === 0) return null;
  return (
    <Part title={title} count={list.length}>
      <ul className="energise-list">
        {list.map((one) => (
          <li key={one.outlet}>
            <Tag letter={letter} kind={kind} /> <OutletLink one={one} /> {one.note}
          </li>
        ))}
      </ul>
    </Part>
  );
}

const LiveList = ({ list }: { readonly list: readonly StillLive[] }) => (
  <ul className="energise-list">
    {list.map((one) => (
      <li key={`${one.outlet} ${one.contact}`}>
        <Tag letter="L" kind="live" /> <OutletLink one={one} />
        {wording.vToGround2(one.contact, one.volts.toFixed(0))}
      </li>
    ))}
  </ul>
);

const OutletLink = ({ one }: { readonly one: NamedOutlet }) => (
  <button
    type="button"
    className="link"
    onClick={() => goTo({ kind: "device", id: parseOutlet(one.outlet).device }, "energise")}
  >
    {one.name}
  </button>
);

const Tag = ({ letter, kind }: { readonly letter: string; readonly kind: string }) => (
  <span className={`energise-tag energise-tag-${kind}`} aria-hidden="true">
    {letter}
  </span>
);
