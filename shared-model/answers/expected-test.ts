import type { OutletKey } from "../model/ids.ts";
import type { ExpectedTest, RecordStage, RecordTest } from "../model/test-record.ts";

/** A test whose expected result is asked for. */
export interface WantedTest {
  readonly stage: RecordStage;
  readonly test: RecordTest;
  /** Outlet, device or enclosure. */
  readonly point: string;
}

/** What the drawing leads to expect of a test; nothing where it does not tell, or not one thing alone. */
export interface ExpectedAnswer extends WantedTest {
  readonly expected?: ExpectedTest;
  /** Of a button: every outlet of its circuit, of which a person says which ones went dark or came on. */
  readonly around?: readonly { readonly outlet: OutletKey; readonly name: string }[];
}
