import type { FillLedger } from "../../../shared-model/answers/fill.ts";
import type { MadeFinding, MadeUp } from "../../../shared-model/answers/make-up.ts";
import { formatVolume, toDecimal } from "../../../shared-model/units/volume.ts";
import { FillBar } from "../details/fill-bar.tsx";
import { Section } from "../details/section.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { wording } from "./words.ts";

/** Fill of the box, now and then. */
export function FillChange({ fill }: { readonly fill: MadeUp["fill"] }) {
  return (
    <Section title={wording.fill}>
      <dl className="make-up-pairs">
        <dt>{wording.fillBefore}</dt>
        <dd>
          <Fill ledger={fill.before} />
        </dd>
        <dt>{wording.fillThen}</dt>
        <dd>
          <Fill ledger={fill.after} />
        </dd>
      </dl>
      {fill.after.available !== undefined && (
        <FillBar
          ledger={fill.after}
          available={toDecimal(fill.after.available)}
          over={fill.after.verdict === "overfull"}
        />
      )}
    </Section>
  );
}

function Fill({ ledger: { total, available, verdict, reason } }: { readonly ledger: FillLedger }) {
  if (verdict === "not-applicable") return <>{reason}</>;
  if (available === undefined) return <span className="fig">{wording.fillUnknown(formatVolume(total))}</span>;
  return (
    <>
      <span className="fig">{wording.fills(formatVolume(total), formatVolume(available))}</span>{" "}
      <strong className={verdict === "overfull" ? "make-up-over" : undefined}>
        {verdict === "overfull" ? wording.notFits : wording.fits}
      </strong>
    </>
  );
}

/** By what each outlet of the circuit is protected then; what is as it was says so once. */
export function ProtectionChange({ protection, replaced }: Pick<MadeUp, "protection" | "replaced">) {
  if (protection.after.length === 0) return null;
  const former = new Map(replaced.map(({ old, by }) => [by, old]));
  const words = (by: readonly string[] | undefined): string =>
    by === undefined || by.length === 0 ? wording.none : wording.isProtectedBy(by.join(", "));
  return (
    <Section title={wording.protection}>
      <dl className="make-up-pairs">
        {protection.after.map(({ name, by }) => {
          const old = former.get(name) ?? name;
          const before = words(protection.before.find((one) => one.name === old)?.by);
          const then = words(by);
          return (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                {before !== then && (
                  <>
                    <del>{before}</del>{" "}
                  </>
                )}
                {before === then ? then : <strong>{then}</strong>}
              </dd>
            </div>
          );
        })}
      </dl>
    </Section>
  );
}

/** What the checks would say that they did not, and what they would no longer say. */
export function FindingsChange({ made: { introduces, repairs } }: { readonly made: MadeUp }) {
  return (
    <>
      <FindingLines title={wording.newFindings} findings={introduces} />
      <FindingLines title={wording.repairs} findings={repairs} />
    </>
  );
}

/** Findings with their severity as a sign and as a word. */
export function FindingLines({
  title,
  findings,
}: {
  readonly title: string;
  readonly findings: readonly MadeFinding[];
}) {
  if (findings.length === 0) return null;
  return (
    <Section title={title} note={findings.length}>
      <ul className="make-up-findings">
        {findings.map(({ rule, severity, message }) => (
          <li key={`${rule} ${message}`}>
            <SeveritySign kind={severity} size={16} />
            <span>
              <span className="unseen">{severity}: </span>
              {message}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
