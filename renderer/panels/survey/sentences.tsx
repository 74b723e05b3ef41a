import { Section } from "../details/section.tsx";

/** A ruled part with plain sentences; nothing where there are none. */
export function Sentences({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <Section title={title}>
      <ul className="survey-sentences">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Section>
  );
}
