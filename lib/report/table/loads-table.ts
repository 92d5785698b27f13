import { applianceDayWh } from "../../circuit/loads.ts";
import type { Appliance, Loads } from "../../plan/loads.ts";
import type { Table } from "./table.ts";

/** Air at which a list of loads is shown, degC: what a fridge's maker states. */
const SHOWN_AT_C = 25;

/** What each appliance takes from the battery on a day that it is used, at 25 degC. */
export const loadsTable = (loads: Loads): Table<Appliance> => ({
  title: "What draws on the battery",
  columns: [
    {
      name: "appliance",
      title: "appliance",
      datatype: "string",
      says: "Its name.",
      value: ({ name }) => name,
    },
    {
      name: "watts",
      title: "draws",
      unit: "watts",
      datatype: "decimal",
      says: "While on, all pieces together.",
      value: ({ watts, howMany }) => watts * howMany,
      decimals: 0,
    },
    {
      name: "use",
      title: "used",
      datatype: "string",
      says: "When, or for how long.",
      value: ({ use }) => {
        switch (use.kind) {
          case "at-times":
            return use.times.map(({ from, to }) => `${from} to ${to}`).join(", ");
          case "for-hours":
            return `${use.hours} h a day`;
          case "cooling":
            return `${use.dutyPct} % of the time at ${use.statedAtC} °C`;
        }
      },
    },
    {
      name: "energy_Wh",
      title: "a day",
      unit: "watt-hours",
      datatype: "integer",
      says: "From the battery on a day that it is used, inverter included, with 25 °C outdoors.",
      value: (appliance) => applianceDayWh(appliance, loads, SHOWN_AT_C),
    },
  ],
  rows: loads.appliances,
  key: ["appliance"],
});
