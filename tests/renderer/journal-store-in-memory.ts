import type { JournalStore, KeptJournal } from "../../renderer/platform/journal-store.ts";

/** A store that keeps journals in a table, and fails or waits when the test says so. */
export class StoreInMemory implements JournalStore {
  readonly journals = new Map<string, { about: KeptJournal; text: string }>();
  readonly calls: string[] = [];
  failing = false;
  /** Set to hold writes back. */
  gate: Promise<void> | undefined;

  async #may(call: string): Promise<void> {
    this.calls.push(call);
    await this.gate;
    if (this.failing) throw new DOMException("full", "QuotaExceededError");
  }
  async begin(about: KeptJournal, lines: readonly string[]): Promise<void> {
    await this.#may("begin");
    this.journals.set(about.id, { about, text: lines.join("") });
  }
  async append(about: KeptJournal, lines: string): Promise<void> {
    await this.#may("append");
    const text = `${this.journals.get(about.id)?.text ?? ""}${lines}`;
    this.journals.set(about.id, { about, text });
  }
  async remove(id: string): Promise<void> {
    await this.#may("remove");
    this.journals.delete(id);
  }
  list = (): Promise<readonly KeptJournal[]> => Promise.resolve([...this.journals.values()].map(({ about }) => about));
  read = (id: string): Promise<string> => Promise.resolve(this.journals.get(id)?.text ?? "");
}
