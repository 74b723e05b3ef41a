import { catalogue } from "../lib/catalogue.ts";

/** Words of warning, by id, wherever they are shown or printed. */
export const CAUTIONS = catalogue({
  WRK1: "Switch off, lock or tag, and prove dead at the wires you will touch. Prove the tester on a live source before and after.",
  WRK2: "A box can hold more than one circuit. Check every conductor, including whites and the box itself.",
  WRK3: "A white wire may be live. Colour is a hint.",
  WRK4: "A neutral shared with another circuit can put up to twice normal voltage on equipment if parted while loaded. Check for current first and open both poles.",
  WRK5: "Readings with the box open and power on are for qualified people with the right gear, one pair at a time, nobody else near, and nothing loose that can move. If a reading can be got dead, get it dead.",
  WRK6: "Never join or part conductors with power on.",
  WRK7: "A low reading on a high-impedance meter, and a noncontact light, are not proof.",
  WRK8: "Brittle, burnt or nicked insulation, a hot smell, aluminium, knob-and-tube or water: stop and reconsider scope.",
  LIM1: "This device reduces shock from hot to ground. It does not help across hot and neutral, nor stop overload or short circuit.",
  LIM2: "It needs both supply wires to work. If the neutral to it is lost it may be dead while outlets remain live.",
  LIM3: "Without a ground wire it still protects; the three slots do not create a ground. Apply the labels. Do not join grounds onward from here.",
  LIM4: "Pressing a plug-in tester where there is no ground proves nothing about the device, and where ground wires are joined to each other but not to the panel it can raise connected metal parts toward full line voltage through the tester. Use the device's own TEST instead.",
  LIM5: "A trip is information. Do not bypass it or move a wire to LINE to silence it.",
  LIM6: "Anything that must not lose power (alarms, sump pump, medical, freezer) needs a decision recorded by a person.",
  LIM7: "A separate device on LINE keeps a load out of other ground-fault trips. It does not help when the breaker opens or its own device trips; use an alarm where loss matters.",
  DAT2: "Section numbers move between editions; quoted ones are by edition where known, check where not.",
  DAT3: "Volumes and connector combinations are typical. Use the marking in the box and the connector package.",
  SIM1: "Computed for an ideal circuit with stated assumptions. Real readings vary with load, meter and length. Unexpected reading: stop, do not adjust the drawing to suit it.",
  SIM2: "The simulator never authorises live work.",
});

export type CautionId = keyof typeof CAUTIONS;
