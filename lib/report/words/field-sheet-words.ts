import { heightM } from "../../plan/site.ts";
import type { FieldSheet } from "../../season/sheet/field-sheet.ts";
import { magneticDeclination } from "../../sun/magnetic.ts";
import { type AimCardLine, aimCard, cardPlace } from "./aim-card.ts";
import { circuitCautions } from "./circuit-cautions.ts";
import { compassWords } from "./plain-directions.ts";
import { steadyAt, windHeldWords } from "./steady-words.ts";
import { compassPoint, listWords } from "./words.ts";

/** What a field sheet says in words beside its figures. */
export interface FieldSheetWords {
  /** The facing as a compass shows it, with how far that can be trusted. */
  readonly compass: string;
  /** The turning of a day, an aim a line; none where the sheet has no turning that pays. */
  readonly turning: readonly AimCardLine[];
  /** For each leg of the sheet, the wind above which it may move. */
  readonly wind: readonly string[];
  readonly cautions: readonly string[];
}

const SUN_CAUTION = "Never look into the sun, not even to aim by it: go by the shadow.";

/** What to do about wind, and the ballast of each leg, by its mark. */
const windCaution = ({ plan, cutting }: FieldSheet): string => {
  const { holdWindMs } = plan.stand.steadying;
  const ballast = cutting.legs.map(({ mark, tiltDeg }) => {
    const { ballastKg } = steadyAt(plan, tiltDeg);
    return ballastKg === null ? `${mark} not by any` : `${mark} ${Math.ceil(ballastKg)} kg`;
  });
  return (
    `Wind: unstaked, the stand may move above ${
      cutting.legs.length === 0
        ? windHeldWords(steadyAt(plan, Math.max(0, plan.stand.groundSlopeDeg)))
        : "the forecast wind named beside each leg"
    } (estimated). Stake it, and bring it in above that.` +
    (ballast.length === 0
      ? ""
      : ` Ballast for ${Math.round(holdWindMs)} m/s, half on the bottom edge, half on the leg's foot: ${listWords(ballast)}.`)
  );
};

/** The other bearings that the calendar turns the stand to. */
const otherFacings = ({ swaps, facingDeg }: FieldSheet): readonly number[] => [
  ...new Set(
    swaps.flatMap(({ to }) => (to.legMm === null || to.bearingDeg === facingDeg ? [] : [to.bearingDeg])),
  ),
];

/** The words of a field sheet: directions hold for the middle day of the season. */
export const fieldSheetWords = (sheet: FieldSheet): FieldSheetWords => {
  const { plan, days, facingDeg, turning, cutting } = sheet;
  const middle = days[Math.floor(days.length / 2)];
  const { latitudeDeg, longitudeDeg } = plan.site;
  const north = magneticDeclination(latitudeDeg, longitudeDeg, heightM(plan.site), middle.noonMs);
  return {
    compass: [facingDeg, ...otherFacings(sheet)]
      .map(
        (bearing, index) =>
          `${index === 0 ? "" : `Facing ${compassPoint(bearing)}: `}${compassWords(bearing, north)}`,
      )
      .join(" "),
    turning: turning?.pays ? aimCard(cardPlace(plan.site, days), turning.period, turning.routine) : [],
    wind: cutting.legs.map(
      ({ tiltDeg }) => `unstaked it may move above ${windHeldWords(steadyAt(plan, tiltDeg))}`,
    ),
    cautions: [windCaution(sheet), SUN_CAUTION, ...circuitCautions(plan)],
  };
};
