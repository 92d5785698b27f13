import type { Verb } from "./verb.ts";

/** What the program is for and which verbs it has. */
export const generalHelp = (verbs: readonly Verb[]): string => {
  const widest = Math.max(...verbs.map(({ name }) => name.length));
  return [
    "panel-season: watt-hours a day from a solar panel propped on cut-to-length legs.",
    "",
    "  panel-season VERB [PLAN] [options]",
    "",
    ...verbs.map(({ name, says }) => `  ${name.padEnd(widest + 2)}${says}`),
    "",
    "PLAN is a JSON file; without one, a demo plan runs. See data/plans for three to start from.",
    "Tilt is in degrees up from level, bearings in degrees clockwise from true north.",
    "",
    "  panel-season help VERB   a verb's options, with examples",
    "  panel-season --version   the version",
    "  panel-season credits     whose data it brings, and under which licences",
    "",
    "Exit code: 0 answered; 1 the input can't be used, every problem told; 2 the command itself is wrong.",
  ].join("\n");
};

/** A verb's own help. */
export const verbHelp = ({ name, says, help }: Verb): string =>
  `panel-season ${name}: ${says}\n\n${help.trim()}`;
