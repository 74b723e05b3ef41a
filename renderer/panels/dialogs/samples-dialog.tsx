import { closeDialog } from "../../state/dialog-store.ts";
import { files } from "../../state/files.ts";
import { type Sample, samples } from "../../state/samples.ts";
import { Modal } from "../../ui/modal.tsx";
import { wording } from "./words.ts";

/** The drawings that come with the program. */
export function SamplesDialog() {
  const open = (sample: Sample): void => {
    closeDialog();
    files.openSample(sample.title, sample.load);
  };
  return (
    <Modal title={wording.samples} onClose={closeDialog}>
      <p className="dim">{wording.opensAsACopyTheSample}</p>
      <ul className="samples">
        {samples.map((sample) => (
          <li key={sample.name}>
            <button type="button" className="sample" onClick={() => open(sample)}>
              <strong>{sample.title}</strong>
              <span className="dim">{sample.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </Modal>
  );
}
