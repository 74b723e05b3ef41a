import { files } from "../../state/files.ts";
import { samples } from "../../state/samples.ts";
import { wording } from "./words.ts";

/** The drawings that come with the program, each with its one sentence. */
export function SampleList() {
  return (
    <section className="start-part" aria-labelledby="start-samples">
      <header className="start-head">
        <h2 id="start-samples">{wording.samples}</h2>
        <span className="dim">{wording.openAsACopy}</span>
      </header>
      <ul className="start-samples">
        {samples.map(({ name, title, about, load }) => (
          <li key={name}>
            <button type="button" className="start-sample" onClick={() => files.openSample(title, load)}>
              <span className="start-name">{title}</span>
              <span className="dim">{about}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
