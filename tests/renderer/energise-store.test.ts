/** How the window energises its drawing: what it asks, what it keeps, and what it never writes into the document. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { dispatch, documentStore, openDocument, setShownState, undo } from "../../renderer/state/document-store.ts";
import { askEnergised, energiseBy } from "../../renderer/state/energise/ask-energised.ts";
import {
  ALL_ON,
  energiseStore,
  isAnswered,
  readMeter,
  readTester,
  shownAnswer,
} from "../../renderer/state/energise/energise-store.ts";
import { doNow, leaveEnergise, setOperated, toggleEnergise } from "../../renderer/state/energise/energising.ts";
import {
  chooseOutlet,
  keepAsEvidence,
  noteMeter,
  noteTester,
  putLead,
} from "../../renderer/state/energise/instruments.ts";
import { logText } from "../../renderer/state/energise/log-text.ts";
import { allOn, operables, operate, pressReset, pressTest } from "../../renderer/state/energise/operating.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import { energise } from "../../shared-model/analysis/energise.ts";
import type { EnergiseAsk, Operable, Operated } from "../../shared-model/answers/energised.ts";
import { outletKey } from "../../shared-model/model/ids.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { boxId, deviceId } from "../builders/ids.ts";
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

/** As the worker does: of the drawing as it is when it is asked. */
const answers: Parameters<typeof energiseBy>[0] = async (state, setting, ask) => {
  asked.push({ setting, ask });
  const { project, revision } = documentStore.get();
  await gate;
  return { revision, answer: energise(getInstallation(project, state), project.supply, setting, ask) };
};
/** Holds answers back. @returns What lets them go. */
function hold(): () => Promise<void> {
  let open: () => void = () => undefined;
  gate = new Promise((done) => {
    open = done;
  });
  return async () => {
    open();
    await settled();
  };
}

beforeEach(() => {
  asked = [];
  gate = undefined;
  energiseBy(answers);
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
    pressReset(R1);
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
    pressReset(R1);
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

describe("what is done", () => {
  test("RESET without power leaves it open, says why, and is a line of the log", async () => {
    await settled();
    pressTest(R1);
    await settled();
    setOperated({ off: [Q1] });
    pressReset(R1);
    await settled();
    expect(energiseStore.get().setting.tripped).toEqual([R1]);
    expect(energiseStore.get().last).toMatchObject({ title: "RESET of R1", done: { holds: false } });
    setOperated({ off: [] });
    pressReset(R1);
    await settled();
    expect(energiseStore.get().setting.tripped).toEqual([]);
    expect(energiseStore.get().log.map(({ title, value, setting }) => [title, value, setting])).toEqual([
      ["RESET of R1", "closed", "R1 tripped"],
      ["RESET of R1", "stays open", "Q1 off, R1 tripped"],
      ["TEST of R1", "R1 opened", "all on, as drawn"],
    ]);
  });

  test("TEST, RESET, a leak and the tester's button are kept as evidence with setting and result", async () => {
    await settled();
    pressTest(R1);
    pressReset(R1);
    doNow({ kind: "leak", outlet: outletKey(R2), contact: "hot", mA: 3 });
    doNow({ kind: "plug-in-button", outlet: outletKey(R2) });
    await settled();
    const log = [...energiseStore.get().log].reverse();
    for (const line of log) keepAsEvidence(line);
    const kept = Object.values(documentStore.get().project.readings).sort((p, q) => p.order - q.order);
    expect(kept.map(({ instrument, points, value }) => [instrument, points, value])).toEqual([
      ["own-test", [R1], "R1 opened; went dark: R1, R2, L1"],
      ["reset", [R1], "closed; came on: R1, R2, L1"],
      ["leak", [outletKey(R2)], "nothing opened; stayed on: R1, R2, L1"],
      ["plug-in-button", [outletKey(R2)], "R1 opened; went dark: R1, R2, L1"],
    ]);
    expect(kept.map(({ arrangement }) => arrangement?.off)).toEqual([[], [R1], [], []]);
    expect(kept.every(({ computed, takenAt, state }) => computed && takenAt && state === "as-found")).toBe(true);
    const times = kept.map(({ takenAt = "" }) => takenAt);
    expect(times).toEqual([...times].sort());
    const [head, , , , ...lines] = logText(energiseStore.get().log).split("\n");
    expect(head).toBe(
      "Computed circuit. Nothing was measured, nothing here says that a wall is dead, and it authorises no live work.",
    );
    expect(lines.filter(Boolean).map((line) => line.split("\t").slice(1, 4))).toEqual([
      ["TEST of R1", "R1 opened; went dark: R1, R2, L1", "as found, all on, as drawn"],
      ["RESET of R1", "closed; came on: R1, R2, L1", "as found, R1 tripped"],
      [
        "Leak of 3 mA at R2, hot to ground outside",
        "nothing opened; stayed on: R1, R2, L1",
        "as found, all on, as drawn",
      ],
      ["Plug-in tester's button at R2", "R1 opened; went dark: R1, R2, L1", "as found, all on, as drawn"],
    ]);
  });

  test("while an answer is on its way what is shown is known to be from before", async () => {
    await settled();
    expect(isAnswered(energiseStore.get())).toBe(true);
    const letGo = hold();
    setOperated({ off: [Q1] });
    expect(isAnswered(energiseStore.get())).toBe(false);
    await letGo();
    expect(isAnswered(energiseStore.get())).toBe(true);
  });
});

describe("asking", () => {
  test("what is set while an answer is on its way is asked once, as it is then; acts are never left out", async () => {
    await settled();
    asked = [];
    const letGo = hold();
    setOperated({ off: [Q1] });
    setOperated({ off: [] });
    setOperated({ idle: [L1] });
    pressTest(R1);
    pressTest(R1);
    expect(asked).toHaveLength(1);
    await letGo();
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
    expect(energiseStore.get().about?.revision).toBe(revision + 1);
    // Its hot hangs on the neutral, through the lamp.
    expect(energiseStore.get().answer?.boxes[boxId("B")]?.devices[R2]?.H1?.kind).toBe("dead");
  });

  test("where nobody answers it says so, and asks again when it is energised again", async () => {
    await settled();
    vi.useFakeTimers();
    energiseBy(async () => undefined);
    setOperated({ off: [Q1] });
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(energiseStore.get().trouble).toMatch(/cannot be computed/);
    // The sheet must not show conditions of another setting.
    expect(shownAnswer(energiseStore.get())).toBeUndefined();
    expect(energiseStore.get().busy).toBe(false);
    expect(await askEnergised("as-found", ALL_ON, {})).toBeUndefined();
    energiseBy(answers);
    leaveEnergise();
    toggleEnergise();
    await settled();
    expect(energiseStore.get()).toMatchObject({ trouble: undefined, setting: { off: [Q1] } });
    expect(find("breaker")).toMatchObject({ stands: "off" });
  });

  test("what could not be done while nobody answered is not done later", async () => {
    await settled();
    vi.useFakeTimers();
    energiseBy(async () => undefined);
    pressTest(R1);
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(energiseStore.get().trouble).toMatch(/cannot be computed/);
    energiseBy(answers);
    setOperated({ idle: [L1] });
    await settled();
    expect(energiseStore.get()).toMatchObject({ trouble: undefined, log: [], setting: { tripped: [] } });
  });

  test("what was to be done in one account of the wiring is not done in the other", async () => {
    openDocument({ project: physicsCircuit().propose().project });
    toggleEnergise();
    setShownState("as-found");
    await settled();
    const letGo = hold();
    pressTest(R1);
    setShownState("proposed");
    await letGo();
    expect(energiseStore.get()).toMatchObject({ log: [], setting: { tripped: [] }, about: { state: "proposed" } });
    expect(asked.at(-1)?.ask.act).toBeUndefined();
  });

  test("all on and reset, and RESET, hold against a TEST that is on its way", async () => {
    for (const reset of [allOn, () => pressReset(R1)]) {
      await settled();
      const letGo = hold();
      pressTest(R1);
      reset();
      await letGo();
      expect(energiseStore.get().setting.tripped).toEqual([]);
      expect(find("ground-fault")).toMatchObject({ stands: "set" });
    }
  });

  test("what opens by itself does not stay open when it was reset on the way", async () => {
    openDocument({ project: physicsCircuit("F04").project });
    const letGo = hold();
    toggleEnergise();
    setOperated({ idle: [L1] });
    pressReset(R1);
    await letGo();
    expect(energiseStore.get().setting).toMatchObject({ idle: [L1], tripped: [] });
  });

  test("an answer about the drawing before is asked for again", async () => {
    await settled();
    vi.useFakeTimers();
    let late = 0;
    energiseBy(async (...what) => {
      const said = await answers(...what);
      late += 1;
      return said && { ...said, revision: said.revision - (late === 1 ? 1 : 0) };
    });
    setOperated({ off: [Q1] });
    await vi.advanceTimersByTimeAsync(1000);
    vi.useRealTimers();
    expect(late).toBe(2);
    expect(energiseStore.get().about?.revision).toBe(documentStore.get().revision);
  });

  test("another document forgets what was set after it was ended, too", async () => {
    await settled();
    setOperated({ off: [Q1] });
    pressTest(R1);
    await settled();
    leaveEnergise();
    expect(energiseStore.get()).toMatchObject({ on: false, setting: { off: [Q1] } });
    expect(energiseStore.get().log).toHaveLength(1);
    energiseStore.merge({ outlet: outletKey(R2) });
    openDocument({ project: physicsCircuit().project });
    expect(energiseStore.get()).toMatchObject({ on: false, setting: ALL_ON, log: [], outlet: undefined });
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
  const shown = (): string => {
    const reading = readMeter(energiseStore.get());
    return reading === undefined ? "--" : reading.kind === "volts" ? reading.volts.toFixed(0) : "ohms";
  };
  const put = async (): Promise<void> => {
    await settled();
    putLead("V", { kind: "device", device: R2, node: "UH" });
    putLead("COM", { kind: "device", device: R2, node: "UN" });
    await settled();
    expect(shown()).toBe("120");
  };

  test("while the answer is on its way the meter shows nothing of the leads before, and nothing is written", async () => {
    await put();
    const letGo = hold();
    putLead("COM", { kind: "device", device: R2, node: "UH" });
    noteMeter();
    expect([shown(), energiseStore.get().log]).toEqual(["--", []]);
    await letGo();
    expect(shown()).toBe("0");
    noteMeter();
    expect(energiseStore.get().log).toMatchObject([{ value: "0.0 V", reading: { points: [`${R2}.UH`, `${R2}.UH`] } }]);
  });

  test("nor of the setting before", async () => {
    await put();
    const letGo = hold();
    operate(find("breaker"));
    noteMeter();
    expect([shown(), energiseStore.get().log]).toEqual(["--", []]);
    await letGo();
    expect(shown()).toBe("ohms");
    noteMeter();
    expect(energiseStore.get().log).toMatchObject([{ reading: { arrangement: { off: [Q1] } } }]);
  });

  test("nor of the drawing before", async () => {
    await put();
    const letGo = hold();
    dispatch({ command: "cap-end", args: { state: "as-found", enclosure: endOf("AB").box, end: endOf("AB").end } });
    noteMeter();
    expect([shown(), energiseStore.get().log]).toEqual(["--", []]);
    await letGo();
    expect(shown()).not.toBe("--");
  });

  test("nor when there is no answer", async () => {
    await put();
    vi.useFakeTimers();
    energiseBy(async () => undefined);
    setOperated({ off: [Q1] });
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(energiseStore.get().trouble).toMatch(/cannot be computed/);
    noteMeter();
    expect([shown(), energiseStore.get().log]).toEqual(["--", []]);
  });

  test("the tester shows nothing of the outlet and the setting before", async () => {
    await settled();
    chooseOutlet(outletKey(R2));
    await settled();
    expect(readTester(energiseStore.get())?.name).toBe("R2");
    for (const change of [() => chooseOutlet(outletKey(R1)), () => setOperated({ off: [Q1] })]) {
      const letGo = hold();
      change();
      noteTester();
      expect([readTester(energiseStore.get()), energiseStore.get().log]).toEqual([undefined, []]);
      await letGo();
      expect(readTester(energiseStore.get())?.name).toBe("R1");
    }
  });

  test("of two switches on one yoke the evidence has both", async () => {
    openDocument({ project: physicsCircuit().device("S9", "switch-two", "B").project });
    toggleEnergise();
    await put();
    const handles = operables().flatMap((one) => (one.kind === "switch" ? [one.handle] : []));
    expect(handles).toHaveLength(2);
    const [first = "", second = ""] = [...handles].sort();
    for (const [positions, words] of [
      [{}, undefined],
      [{ [first]: 1 }, "off; on"],
      [{ [second]: 1 }, "on; off"],
      [{ [first]: 1, [second]: 1 }, "off; off"],
    ] as const) {
      setOperated({ positions });
      await settled();
      noteMeter();
      expect(energiseStore.get().log[0]?.reading?.arrangement?.switches?.[deviceId("S9")]).toBe(words);
    }
  });

  test("the meter's reading is written into the log, and kept as evidence that was computed, in one undo step", async () => {
    await settled();
    putLead("V", { kind: "device", device: R2, node: "UH" });
    putLead("COM", { kind: "device", device: R2, node: "UN" });
    operate(find("breaker"));
    operate(find("breaker"));
    await settled();
    setOperated({ off: [] });
    await settled();
    noteMeter();
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
    noteTester();
    const [line] = energiseStore.get().log;
    expect(line).toMatchObject({ title: "Plug-in test at R2", value: "open hot / dead" });
    expect(line?.reading).toMatchObject({
      instrument: "plug-in-tester",
      points: [outletKey(R2)],
      arrangement: { off: [R1] },
    });
  });
});
