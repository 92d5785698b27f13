import { type DataSidecar, shortCredit } from "../../lib/report/words/credits.ts";

/** The sidecars of the data that travels in the pages. */
const SIDECARS = import.meta.glob<DataSidecar>("../../data/{climates,weather}/*.json", {
  eager: true,
  import: "default",
});

/** Whose data the figures may rest on, in one line. */
export const dataCredit = (): string => shortCredit(Object.values(SIDECARS));
