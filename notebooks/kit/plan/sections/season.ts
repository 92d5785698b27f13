import type { Section } from "../field.ts";

export const seasonSection: Section = {
  id: "season",
  title: "Season",
  fields: [
    { kind: "date", path: ["season", "from"], label: "First day" },
    {
      kind: "date",
      path: ["season", "to"],
      label: "Last day",
      says: "A season over the new year ends in the next year.",
    },
  ],
};
