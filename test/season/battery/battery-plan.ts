import { type Plan, type PlanInput, readPlan } from "../../../lib/plan/index.ts";

/** A plan whose battery is quickly lived with: a few clear days in hours, one propped panel that lies flat, a lamp, two legs. */
export const quickPlan = (changes: Partial<PlanInput> = {}): Plan =>
  readPlan({
    site: { latitudeDeg: 50, longitudeDeg: 8, timeZone: "Etc/GMT-1" },
    season: { from: "2027-03-30", to: "2027-04-02", stepMinutes: 60 },
    panels: [{ name: "propped", module: { powerW: 100 } }],
    stand: {
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 700 },
      ],
    },
    aiming: { bearingStepDeg: 45 },
    battery: { chemistry: "LiFePO4", capacityAh: 20 },
    loads: {
      appliances: [
        { name: "lamp", watts: 20, use: { kind: "at-times", times: [{ from: "18:00", to: "23:00" }] } },
      ],
    },
    ...changes,
    worth: { now: "flat", ...changes.worth },
  });
