/** How the window energises its drawing: what it asks, what it keeps, and what it never writes into the document. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { dispatch, documentStore, openDocument, undo } from "../../renderer/state/document-store.ts";
import { askEnergised, energiseBy } from "../../renderer/state/energise/ask-energised.ts";
import { ALL_ON, energiseStore } from "../../renderer/state/energise/energise-store.ts";
import { leaveEnergise, setOperated, toggleEnergise } from "../../renderer/state/energise/energising.ts";
import { keepAsEvidence, noteMeter, noteTester, putLead } from "../../renderer/state/energise/instruments.ts";
import { allOn, operables, operate, pressTest, resetDevice } from "../../renderer/state/energise/operating.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import { energise } from "../../shared-model/analysis/energise.ts";
import type { EnergiseAsk, Operable, Operated } from "../../shared-model/answers/energised.ts";
import { outletKey } from "../../shared-model/model/ids.ts";
import { deviceId } from "../builders/ids.ts";
import { physicsCircuit } from "../builders/physics-circuit.ts";

const [R1, R2, Q1, L1] = ["R1", "R2", "Q1", "L1"].map(deviceId);
if (R1 === undefined || R2 === undefined || Q1 === undefined || L1 === undefined) throw new Error("No ids.");

interface Asked {
  readonly setting: Operated;
  readonly ask: EnergiseAsk;
}
let asked: Asked[] = [];
/** Answers wait until they are let go, where a test says so. */
let gate: Promise<void> | undefined;

const settled = async (): Promise<void> => {
  await vi.waitFor(() => expect(energiseStore.get().busy).toBe(false));
};

beforeEach(() => {
  asked = [];
  gate = undefined;
  energiseBy(async (_state, setting, ask) => {
    asked.push({ setting, ask });
    await gate;
    const { project, revision } = documentStore.get();
    return { revision, answer: energise(project.asFound, project.supply, setting, ask) };
  });
  openDocument({ project: physicsCircuit().project });
  toggleEnergise();
});
afterEach(async () => {
  leaveEnergise();
  await settled();
  energiseStore.merge({ setting: ALL_ON, log: [], outlet: undefined });
});

const find = (kind: Operable["kind"]): Operable => {
  const one = operables().find((each) => each.kind === kind);
  if (one === undefined) throw new Error(`No ${kind}.`);
  return one;
};

describe("operating", () => {
  test("a breaker goes off and on; nothing of it is in the document or in undo", async () => {
    await settled();
    const before = documentStore.get();
    operate(find("breaker"));
    await settled();
    expect(energiseStore.get().setting.off).toEqual([Q1]);
    expect(find("breaker")).toMatchObject({ stands: "off" });
    expect(energiseStore.get().answer?.powerOff).toBe(true);
    operate(find("breaker"));
    await settled();
    expect(find("breaker")).toMatchObject({ stands: "on" });
    expect(documentStore.get()).toBe(before);
    expect(undo()).toBeUndefined();
  });

  test("TEST opens the device, which stays open until RESET, and the log says so", async () => {
    await settled();
    pressTest(R1);
    await settled();
    expect(energiseStore.get().setting.tripped).toEqual([R1]);
    expect(energiseStore.get().last).toMatchObject({ title: "TEST of R1" });
    expect(energiseStore.get().log.map(({ title, value }) => `${title}: ${value}`)).toEqual(["TEST of R1: R1 opened"]);
    setOperated({ idle: [L1] });
    await settled();
    expect(find("ground-fault")).toMatchObject({ stands: "tripped" });
    resetDevice(R1);
    await settled();
    expect(find("ground-fault")).toMatchObject({ stands: "set" });
  });

  test("a device that opens by itself stays open when its cause is gone", async () => {
    openDocument({ project: physicsCircuit("F04").project });
    await settled();
    expect(energiseStore.get().on).toBe(false);
    toggleEnergise();
    await settled();
    expect(energiseStore.get().setting.tripped).toEqual([R1]);
    operate(find("load"));
    await settled();
    expect(energiseStore.get().setting).toMatchObject({ idle: [L1], tripped: [R1] });
    resetDevice(R1);
    await settled();
    expect(energiseStore.get().setting.tripped).toEqual([]);
    expect(find("ground-fault")).toMatchObject({ stands: "set" });
  });

  test("all on and reset", async () => {
    await settled();
    setOperated({ off: [Q1], tripped: [R1], idle: [L1] });
    await settled();
    allOn();
    await settled();
    expect(energiseStore.get().setting).toEqual(ALL_ON);
  });
});

describe("asking", () => {
  test("what is set while an answer is on its way is asked once, as it is then; acts are never left out", async () => {
    await settled();
    asked = [];
    let open: () => void = () => undefined;
    gate = new Promise((done) => {
      open = done;
    });
    setOperated({ off: [Q1] });
    setOperated({ off: [] });
    setOperated({ idle: [L1] });
    pressTest(R1);
    pressTest(R1);
    expect(asked).toHaveLength(1);
    open();
    await settled();
    expect(asked.map(({ ask }) => ask.act?.kind ?? "")).toEqual(["", "own-test", "own-test"]);
    expect(asked[1]?.setting).toMatchObject({ off: [], idle: [L1] });
    // The second press finds it open.
    expect(asked[2]?.setting.tripped).toEqual([R1]);
  });

  test("an edit computes anew, with the revision that it is about", async () => {
    await settled();
    const { revision } = documentStore.get();
    dispatch({ command: "cap-end", args: { state: "as-found", enclosure: endOf("AB").box, end: endOf("AB").end } });
    await settled();
    expect(energiseStore.get().revision).toBe(revision + 1);
    expect(energiseStore.get().answer?.boxes[endOf("AB").box]?.devices[R2]?.H1?.kind).not.toBe("live");
  });

  test("where nobody answers it says so, and asks again when it is energised again", async () => {
    await settled();
    vi.useFakeTimers();
    energiseBy(async () => undefined);
    setOperated({ off: [Q1] });
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(energiseStore.get().trouble).toMatch(/cannot be computed/);
    expect(energiseStore.get().busy).toBe(false);
    expect(await askEnergised("as-found", ALL_ON, {})).toBeUndefined();
  });

  test("another document ends it and forgets what was set", async () => {
    await settled();
    setOperated({ off: [Q1] });
    await settled();
    openDocument({ project: physicsCircuit().project });
    expect(energiseStore.get()).toMatchObject({ on: false, setting: ALL_ON, log: [], answer: undefined });
    expect(sessionStore.get().pane).not.toBe("energise");
  });

  test("an empty drawing is not energised", async () => {
    const { project } = documentStore.get();
    openDocument({ project: { ...project, asFound: { ...project.asFound, enclosures: {}, cables: {}, loads: {} } } });
    toggleEnergise();
    expect(energiseStore.get().on).toBe(false);
    expect(sessionStore.get().notice?.title).toBe("Nothing to energise");
  });
});

const endOf = (cable: string) => {
  const { asFound } = documentStore.get().project;
  const found = Object.values(asFound.cables).find(({ name }) => name === cable);
  const box = found?.sides.a;
  if (found === undefined || box === undefined || !("enclosure" in box)) throw new Error(`No ${cable}.`);
  return { box: box.enclosure, end: `${found.id}.bk.a` as never };
};

describe("readings", () => {
  test("the meter's reading is written into the log, and kept as evidence that was computed, in one undo step", async () => {
    await settled();
    putLead("V", { kind: "device", device: R2, node: "UH" });
    putLead("COM", { kind: "device", device: R2, node: "UN" });
    operate(find("breaker"));
    operate(find("breaker"));
    await settled();
    setOperated({ off: [] });
    await settled();
    const reading = energiseStore.get().answer?.meter;
    if (reading === undefined) throw new Error("No reading.");
    noteMeter(reading);
    const [line] = energiseStore.get().log;
    expect(line?.title).toBe("R2 upper hot slot to R2 upper neutral slot");
    expect(line?.value).toMatch(/^119\.[78] V$/);
    expect(documentStore.get().project.readings).toEqual({});
    if (line !== undefined) keepAsEvidence(line);
    const kept = Object.values(documentStore.get().project.readings);
    expect(kept).toMatchObject([
      { instrument: "meter", computed: true, unit: "V", state: "as-found", points: [`${R2}.UH`, `${R2}.UN`] },
    ]);
    expect(energiseStore.get().log[0]?.kept).toBe(kept[0]?.id);
    expect(undo()).toMatch(/^Add reading 119/);
    expect(documentStore.get().project.readings).toEqual({});
  });

  test("the plug-in tester is kept by the name of the condition, with what is off", async () => {
    await settled();
    setOperated({ tripped: [R1] });
    energiseStore.merge({ outlet: outletKey(R2) });
    setOperated({ idle: [] });
    await settled();
    const tested = energiseStore.get().answer?.outlet;
    if (tested === undefined) throw new Error("Not tested.");
    noteTester(tested);
    const [line] = energiseStore.get().log;
    expect(line).toMatchObject({ title: "Plug-in test at R2", value: "open hot / dead" });
    expect(line?.reading).toMatchObject({
      instrument: "plug-in-tester",
      points: [outletKey(R2)],
      arrangement: { off: [R1] },
    });
  });
});
