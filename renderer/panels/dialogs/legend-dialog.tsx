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
import { wording } from "./words.ts";

type Line = readonly [key: string, sign: ReactNode, means: string];

const ROLE_MEANS: Readonly<Record<Role, string>> = {
  ungrounded: wording.hotABreakerFeedsItIn,
  switched: wording.switchedHotSomeSwitchPositionTakes,
  traveller: wording.travellerBetween3WayOr4,
  grounded: wording.neutralJoinedToTheNeutralOf,
  ground: wording.equipmentGround,
  signal: wording.interconnectOfSmokeAlarms,
  floating: wording.floatingASupplyIsDrawnAnd,
  conflict: wording.moreThanOneOfTheseIs,
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
  ["brass", <Glyph key="brass" id="screw-brass" size={20} />, wording.hBrassTheHot],
  ["silver", <Glyph key="silver" id="screw-silver" size={20} />, wording.nSilverTheNeutral],
  ["green", <Glyph key="green" id="screw-green" size={20} />, wording.gGreenTheEquipmentGround],
  ["LINE", <strong key="LINE">{wording.line}</strong>, wording.comesFromThePanel],
  ["LOAD", <strong key="LOAD">{wording.load}</strong>, wording.whatTheDeviceProtectsBeyondItself],
  ["COM", <strong key="COM">{wording.com}</strong>, wording.theCommonScrewOfA3],
];

const FOUND: readonly Line[] = [
  ...SEVERITIES.map(
    (severity): Line => [severity, <SeveritySign key={severity} kind={severity} size={20} />, SEVERITY_WORDS[severity]],
  ),
  ["unknown", <SeveritySign key="unknown" kind="unknown" size={20} />, wording.cannotTellAFactIsMissing],
];

const PARTS: readonly Line[] = (
  [
    ["splice", wording.spliceAConnectorAndTheConductor],
    ["cap", wording.cappedEnd],
    ["bond", wording.groundingScrewOfTheMetalBox],
    ["cable", wording.cableAndWhereItEnters],
    ["scope-new", wording.newInProposedNotThereAs],
  ] as const
).map(([id, means]) => [id, <Glyph key={id} id={id} size={20} />, means]);

const CONDUCTORS: readonly Line[] = COLOURS.map((colour) => [
  colour,
  <Swatch key={colour} colour={colour} />,
  colour === "bare" ? wording.bareCopper : `${colourCode(colour)}: ${colour}`,
]);

/** What the letters and signs of the sheet mean, shown by the signs themselves. */
export default function LegendDialog() {
  return (
    <Modal title={wording.signsAndLetters} onClose={closeDialog} wide>
      <div className="legend">
        <Group caption={wording.inASquareBesideASplice} lines={ROLES} />
        <Group caption={wording.onAConductorWhileTheDrawing} lines={CONDITION_LINES} wide />
        <Group caption={wording.atATerminalWhatItIs} lines={TERMINALS} />
        <Group caption={wording.findings} lines={FOUND} />
        <Group caption={wording.onTheSheet} lines={PARTS} />
        <Group caption={wording.coloursOfConductorsByTheLetters} lines={CONDUCTORS} />
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
