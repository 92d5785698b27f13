import type { SeasonYield } from "../../season/light/season-yield.ts";
import { settingColour } from "./theme.ts";

/** How a setting is shown wherever it appears: its colour, and the tilt it is drawn at. */
export interface SettingStyle {
  readonly name: string;
  readonly tiltDeg: number;
  readonly colour: string;
}

/**
 * A colour for each setting. Lying flat always takes the first; legs take the others from the least tilt to the
 * greatest, so that a chart of any notebook shows the same leg in the same colour.
 */
export const settingStyles = (
  settings: readonly Pick<SeasonYield["settings"][number], "setting">[],
): readonly SettingStyle[] => {
  const legs = settings
    .map(({ setting }, index) => ({ index, setting }))
    .filter(({ setting }) => setting.legMm !== null)
    .sort((a, b) => a.setting.tiltDeg - b.setting.tiltDeg || a.index - b.index);
  const rank = new Map(legs.map(({ index }, place) => [index, place + 1]));
  return settings.map(({ setting }, index) => ({
    name: setting.name,
    tiltDeg: setting.tiltDeg,
    colour: settingColour(rank.get(index) ?? 0),
  }));
};
