import { files } from "../../state/files.ts";
import { templates } from "../../state/templates.ts";
import { wording } from "./words.ts";

/** Common boxes to begin with, each made up. */
export function TemplateList() {
  return (
    <section className="start-part" aria-labelledby="start-templates">
      <header className="start-head">
        <h2 id="start-templates">{wording.commonBoxes}</h2>
        <span className="dim">{wording.madeUpToBeginWith}</span>
      </header>
      <ul className="start-samples start-templates">
        {templates.map(({ name, title, about, load }) => (
          <li key={name}>
            <button type="button" className="start-sample" title={about} onClick={() => files.openSample(title, load)}>
              <span className="start-name">{title}</span>
              <span className="unseen">. {about}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
