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

/** One table a room: mean and greatest size of the difference, and what is allowed for a case. */
export const accuracyMarkdown = (sections: readonly SectionOutcome[]): string => {
  const cases = sections
    .flatMap(({ outcomes }) => outcomes)
    .reduce((sum, each) => sum + each.cases.length, 0);
  const count = sections.reduce((sum, { outcomes }) => sum + outcomes.length, 0);
  return [
    `${cases} cases in ${count} comparisons. Differences are ours minus theirs, by size; each case has its own allowance.`,
    ...sections.flatMap(({ room, outcomes }) => ["", headed(room), "", ...HEADER, ...outcomes.map(row)]),
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
