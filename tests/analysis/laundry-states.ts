import type { DeviceId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { Drawing } from "../rules/drawing.ts";
import { laundryAsFound, laundryProposed } from "../rules/laundry.ts";

/** Two drawings as the two states of one document. */
export const statesOf = (asFound: Drawing, proposed: Drawing): Project => ({
  ...asFound.project(),
  proposed: structuredClone(proposed.project().asFound),
});

/** The laundry circuit as found, and as the plan has it: R1b takes the place of R1, R4b that of R4. */
export const laundryBoth = (): Project =>
  statesOf(
    laundryAsFound(),
    laundryProposed()
      .setDevice("R1b", { replaces: "R1" as DeviceId })
      .setDevice("R4b", { replaces: "R4" as DeviceId }),
  );
