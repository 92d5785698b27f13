/** The accuracy statement: what every comparison came to, as Markdown and as JSON. */
import type { CheckedCase, CheckedRoom } from "../../notebooks/kit/checks/outcomes.ts";
import type { Section } from "./comparisons/all.ts";
import { type Outcome, outcomeOf } from "./comparisons/comparison.ts";

/** A room's outcomes. */
export interface SectionOutcome {
  readonly room: string;
  readonly outcomes: readonly Outcome[];
}

/** Runs every comparison of every room. */
export const runSections = (sections: readonly Section[]): readonly SectionOutcome[] =>
  sections.map(({ room, comparisons }) => ({ room, outcomes: comparisons.map(outcomeOf) }));

/** Two digits, the second only where it says something; no exponent for everyday sizes. */
export const shortNumber = (value: number): string => {
  if (value === 0) return "0";
  if (!Number.isFinite(value)) return "-";
  const size = Math.abs(value);
  return size < 1e-4 || size >= 1e5 ? value.toExponential(0) : String(Number(value.toPrecision(2)));
};

const escaped = (text: string): string => text.replaceAll("|", "\\|");

const toleranceWords = ({ leastTolerance, greatestTolerance }: Outcome): string => {
  const [least, most] = [shortNumber(leastTolerance), shortNumber(greatestTolerance)];
  return least === most ? most : `${least} to ${most}`;
};

const row = (outcome: Outcome): string => {
  const { comparison, cases, meanDifference, greatestDifference } = outcome;
  const cells = [
    comparison.quantity,
    comparison.reference,
    String(cases.length),
    shortNumber(meanDifference),
    shortNumber(greatestDifference),
    toleranceWords(outcome),
    comparison.unit,
    comparison.cause,
  ];
  return `| ${cells.map(escaped).join(" | ")} |`;
};

const HEADER = [
  "| quantity | reference | n | mean | greatest | allowed | unit | why so much is allowed |",
  "| --- | --- | ---: | ---: | ---: | ---: | --- | --- |",
];

const headed = (room: string): string => `**${room[0]?.toUpperCase()}${room.slice(1)}**`;

const casesOf = (outcomes: readonly Outcome[]): number =>
  outcomes.reduce((sum, { cases }) => sum + cases.length, 0);

/** How much is held against the outside, and how much only against itself. */
const countWords = (sections: readonly SectionOutcome[]): string => {
  const all = sections.flatMap(({ outcomes }) => outcomes);
  const outside = all.filter(({ comparison }) => comparison.identity === undefined);
  const within = all.filter(({ comparison }) => comparison.identity !== undefined);
  return `${casesOf(outside)} cases in ${outside.length} comparisons with the outside; ${casesOf(within)} more in ${within.length} check the code against itself and are not counted.`;
};

/** The page of accuracy: one table a room, mean and greatest size of the difference, and what is allowed for a case. */
export const accuracyMarkdown = (sections: readonly SectionOutcome[]): string =>
  [
    "# Accuracy",
    "",
    "Made by `npm run accuracy` from the comparisons that the tests themselves gate on.",
    "",
    `${countWords(sections)} Differences are ours minus theirs, by size; each case has its own allowance.`,
    ...sections.flatMap(({ room, outcomes }) => {
      const outside = outcomes.filter(({ comparison }) => comparison.identity === undefined);
      const within = outcomes.filter(({ comparison }) => comparison.identity !== undefined);
      return [
        "",
        headed(room),
        "",
        ...HEADER,
        ...outside.map(row),
        ...(within.length === 0
          ? []
          : [
              "",
              "Against itself:",
              "",
              ...within.map(
                ({ comparison, cases }) =>
                  `- ${comparison.quantity} (${comparison.reference}, ${cases.length} cases): ${comparison.identity}`,
              ),
            ]),
      ];
    }),
    "",
  ].join("\n");

/** The comparisons that the README's digest shows: what a reader would ask about first. */
const DIGEST = [
  "apparent altitude of the sun",
  "sunrise, sunset",
  "clear days, Bird in standard air, daily sums of a station",
  "light on upright planes from global and diffuse, bias of S, W, N",
  "the same, root-mean-square of daily sums",
  "months on planes near latitude from horizontal months alone, the worst of twelve",
  "distribution of daily clearness, greatest distance (Kolmogorov-Smirnov) over a year",
  "every local maximum of its power, and how many there are",
  "gauge resistance at 75 degC, solid and stranded",
] as const;

/** Ten lines of the page for the README. */
export const accuracyDigest = (sections: readonly SectionOutcome[]): string => {
  const all = sections.flatMap(({ outcomes }) => outcomes);
  const lines = DIGEST.map((quantity) => {
    const found = all.find(({ comparison }) => comparison.quantity === quantity);
    if (found === undefined) throw new Error(`accuracy digest: no comparison "${quantity}"`);
    const { comparison, cases, meanDifference, greatestDifference } = found;
    const numbers =
      cases.length === 1
        ? shortNumber(greatestDifference)
        : `${shortNumber(meanDifference)} / ${shortNumber(greatestDifference)}`;
    return `| ${[comparison.quantity, comparison.reference, String(cases.length), numbers, comparison.unit].map(escaped).join(" | ")} |`;
  });
  return [
    countWords(sections),
    "",
    "| quantity | against | n | mean / greatest difference | unit |",
    "| --- | --- | ---: | ---: | --- |",
    ...lines,
  ].join("\n");
};

/** What is wrong, a line each: cases out of tolerance, and comparisons that lost or gained a case. */
export const failures = (sections: readonly SectionOutcome[]): readonly string[] =>
  sections
    .flatMap(({ outcomes }) => outcomes)
    .flatMap(({ comparison, cases, misses }) => [
      ...(cases.length === comparison.count
        ? []
        : [`${comparison.quantity}: ${cases.length} cases, expected ${comparison.count}`]),
      ...misses.map(
        ({ id, ours, theirs, difference, tolerance }) =>
          `${comparison.quantity}, ${id}: ours ${ours}, theirs ${theirs}, apart ${difference}, allowed ${tolerance}`,
      ),
    ]);

const digits = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(6)) : value);

/** The same for the notebook that draws it. */
export const accuracyJson = (sections: readonly SectionOutcome[]): readonly CheckedRoom[] =>
  sections.map(({ room, outcomes }) => ({
    room,
    comparisons: outcomes.map(({ comparison, cases, meanDifference, greatestDifference }) => ({
      quantity: comparison.quantity,
      reference: comparison.reference,
      unit: comparison.unit,
      cause: comparison.cause,
      meanDifference: digits(meanDifference),
      greatestDifference: digits(greatestDifference),
      cases: cases.map(
        ({ id, ours, theirs, difference, tolerance }): CheckedCase => [
          id,
          digits(ours),
          digits(theirs),
          digits(difference),
          digits(tolerance),
        ],
      ),
    })),
  }));
