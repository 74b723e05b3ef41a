import type { ReactNode } from "react";
import type { Role } from "../../../shared-model/answers/circuit.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { COLOURS, colourCode } from "../../../shared-model/units/colour.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { CONDITION_TAGS, CONDITIONS } from "../../state/energise/energise-words.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { ROLE_TAGS } from "../../state/role-tags.ts";
import { Glyph } from "../../ui/glyph.tsx";
import { Modal } from "../../ui/modal.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { Swatch } from "../swatch.tsx";
import { ConditionSign } from "./condition-sign.tsx";
import "./legend.css";

type Line = readonly [key: string, sign: ReactNode, means: string];

const ROLE_MEANS: Readonly<Record<Role, string>> = {
  ungrounded: "hot: a breaker feeds it in every switch position",
  switched: "switched hot: some switch position takes it off",
  traveller: "traveller between 3-way or 4-way switches",
  grounded: "neutral: joined to the neutral of the supply",
  ground: "equipment ground",
  signal: "interconnect of smoke alarms",
  floating: "floating: a supply is drawn, and nothing of it gets here",
  conflict: "more than one of these is joined here",
};

const ROLES: readonly Line[] = Object.entries(ROLE_TAGS).map(([role, { letter }]) => [
  role,
  <svg key={role} width="20" height="20" viewBox="-10 -10 20 20" aria-hidden="true">
    <g className={`sheet-role sheet-role-${role}`}>
      <rect x={-7} y={-7} width={14} height={14} rx={2} />
      <text y={4}>{letter}</text>
    </g>
  </svg>,
  `${letter}: ${ROLE_MEANS[role as Role]}`,
]);

const CONDITION_LINES: readonly Line[] = CONDITIONS.map((kind) => [
  kind,
  <ConditionSign key={kind} kind={kind} />,
  `${CONDITION_TAGS[kind].letter}: ${CONDITION_TAGS[kind].word}; ${CONDITION_TAGS[kind].pattern}`,
]);

const TERMINALS: readonly Line[] = [
  ["brass", <Glyph key="brass" id="screw-brass" size={20} />, "H, brass: the hot"],
  ["silver", <Glyph key="silver" id="screw-silver" size={20} />, "N, silver: the neutral"],
  ["green", <Glyph key="green" id="screw-green" size={20} />, "G, green: the equipment ground"],
  ["LINE", <strong key="LINE">LINE</strong>, "comes from the panel"],
  ["LOAD", <strong key="LOAD">LOAD</strong>, "what the device protects beyond itself"],
  ["COM", <strong key="COM">COM</strong>, "the common screw of a 3-way switch; T1 and T2 are its travellers"],
];

const FOUND: readonly Line[] = [
  ...SEVERITIES.map(
    (severity): Line => [severity, <SeveritySign key={severity} kind={severity} size={20} />, SEVERITY_WORDS[severity]],
  ),
  ["unknown", <SeveritySign key="unknown" kind="unknown" size={20} />, "cannot tell: a fact is missing"],
];

const PARTS: readonly Line[] = (
  [
    ["splice", "splice: a connector and the conductor ends in it"],
    ["cap", "capped end"],
    ["bond", "grounding screw of the metal box, or the bond of a panel"],
    ["cable", "cable, and where it enters"],
    ["scope-new", "+: new in proposed, not there as found"],
  ] as const
).map(([id, means]) => [id, <Glyph key={id} id={id} size={20} />, means]);

const CONDUCTORS: readonly Line[] = COLOURS.map((colour) => [
  colour,
  <Swatch key={colour} colour={colour} />,
  colour === "bare" ? "bare copper" : `${colourCode(colour)}: ${colour}`,
]);

/** What the letters and signs of the sheet mean, shown by the signs themselves. */
export default function LegendDialog() {
  return (
    <Modal title="Signs and letters" onClose={closeDialog} wide>
      <div className="legend">
        <Group caption="In a square beside a splice: what the checks found" lines={ROLES} />
        <Group caption="On a conductor while the drawing is energised, computed" lines={CONDITION_LINES} wide />
        <Group caption="At a terminal: what it is made for" lines={TERMINALS} />
        <Group caption="Findings" lines={FOUND} />
        <Group caption="On the sheet" lines={PARTS} />
        <Group caption="Colours of conductors, by the letters of IEC 60757" lines={CONDUCTORS} />
      </div>
    </Modal>
  );
}

function Group({
  caption,
  lines,
  wide = false,
}: {
  readonly caption: string;
  readonly lines: readonly Line[];
  readonly wide?: boolean;
}) {
  return (
    <section>
      <h3 className="keys-caption">{caption}</h3>
      <ul className={wide ? "legend-lines legend-lines-wide" : "legend-lines"}>
        {lines.map(([key, sign, means]) => (
          <li key={key}>
            <span className="legend-sign">{sign}</span>
            <span>{means}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
