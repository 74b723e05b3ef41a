import type { OutletKey } from "../../../shared-model/model/ids.ts";
import type { RecordStage } from "../../../shared-model/model/test-record.ts";
import type { TestOutcome } from "../../../shared-model/queries/compare-test.ts";
import type { RecordRow } from "../../../shared-model/queries/test-record.ts";
import type { Entered } from "../../state/test-record.ts";
import type { ExpectedOf } from "./use-expected.ts";

/** What every line of the record needs to know. */
export interface Seen {
  readonly readOnly: boolean;
  readonly expectedOf: ExpectedOf;
  readonly nameOf: (stage: RecordStage, outlet: OutletKey | string) => string | undefined;
  readonly outcomeOf: (row: RecordRow, stage: RecordStage) => TestOutcome | undefined;
  /** What is read aloud after a line was written, or why it was not. */
  readonly onSaid: (text: string, refused: boolean, row: RecordRow, stage: RecordStage) => void;
}

export interface CellProps {
  readonly row: RecordRow;
  readonly stage: RecordStage;
  readonly box: string;
  readonly seen: Seen;
}

export interface EntryProps extends CellProps {
  readonly wrong: boolean;
  readonly found: string | undefined;
  /** @returns Whether it was taken. */
  readonly onEnter: (entered: Entered) => boolean;
}
