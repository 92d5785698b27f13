/** The charts' colours: the one place they are stated. Charts name them, a page or a file says what they are. */

interface Scheme {
  readonly paper: string;
  readonly raised: string;
  readonly ink: string;
  readonly muted: string;
  readonly hairline: string;
  readonly sun: string;
  readonly accent: string;
  readonly warning: string;
  /** Lying flat first, then the legs from the least tilt to the greatest. */
  readonly settings: readonly string[];
}

/**
 * Eight hues that stay apart under the common kinds of colour blindness and stand at 3:1 or more against the paper.
 * Low tilts are warm (high summer sun), high tilts cool. Never the only mark: each setting is also drawn at its tilt.
 */
export const SCHEMES: Readonly<Record<"light" | "dark", Scheme>> = {
  light: {
    paper: "#fbfcfa",
    raised: "#eef2ee",
    ink: "#17251f",
    muted: "#56655d",
    hairline: "#d3dbd5",
    sun: "#f3e3ad",
    accent: "#0b6650",
    warning: "#a3271b",
    settings: ["#38433e", "#a85500", "#007a64", "#2459b5", "#8a2f86", "#7d5b00", "#c02a5c", "#17717f"],
  },
  dark: {
    paper: "#111916",
    raised: "#1b2621",
    ink: "#e8efe9",
    muted: "#a2b1a8",
    hairline: "#33413a",
    sun: "#3d3a22",
    accent: "#63cfae",
    warning: "#ff9b8c",
    settings: ["#d8e0da", "#f0a04b", "#35c7a6", "#82adff", "#dd93d9", "#d3b23f", "#ff86a8", "#6fc3d3"],
  },
};

/** How many settings have a colour of their own; beyond that colours come round again and the drawn tilt tells. */
export const SETTING_COLOURS = SCHEMES.light.settings.length;

const variables = ({ settings, ...named }: Scheme): string =>
  [
    ...Object.entries(named).map(([name, colour]) => `--season-${name}:${colour}`),
    ...settings.map((colour, index) => `--season-setting-${index}:${colour}`),
  ].join(";");

/** Which colours a style sheet holds: fixed to one scheme, or following the reader's own setting. */
export type SchemeChoice = "light" | "dark" | "reader";

/** The style sheet that gives the charts' colour names their values, for everything under a selector. */
export const themeCss = (selector: string, choice: SchemeChoice = "reader"): string => {
  if (choice !== "reader") return `${selector}{${variables(SCHEMES[choice])}}`;
  return (
    `${selector}{${variables(SCHEMES.light)}}` +
    `@media (prefers-color-scheme: dark){${selector}{${variables(SCHEMES.dark)}}}` +
    `@media print{${selector}{${variables(SCHEMES.light)}}}`
  );
};

/** A named colour, for an attribute of a chart. */
export const colour = (name: Exclude<keyof Scheme, "settings">): string => `var(--season-${name})`;

/** The colour of a setting by its rank among the settings, least tilt first. */
export const settingColour = (rank: number): string => `var(--season-setting-${rank % SETTING_COLOURS})`;

/** What is written on charts is set in this, so that a chart in a file and on a page look alike. */
export const CHART_FONT = 'system-ui, -apple-system, "Segoe UI", "Noto Sans", "Open Sans", sans-serif';
