import { heightM } from "../../plan/site.ts";
import type { FieldSheet } from "../../season/sheet/field-sheet.ts";
import { WIND_CAUTION } from "../../stand/steadiness.ts";
import { magneticDeclination } from "../../sun/magnetic.ts";
import { type AimCardLine, aimCard, cardPlace } from "./aim-card.ts";
import { circuitCautions } from "./circuit-cautions.ts";
import { compassWords } from "./plain-directions.ts";

/** What a field sheet says in words beside its figures. */
export interface FieldSheetWords {
  /** The facing as a compass shows it, with how far that can be trusted. */
  readonly compass: string;
  /** The turning of a day, an aim a line; none where the sheet has no turning. */
  readonly turning: readonly AimCardLine[];
  readonly cautions: readonly string[];
}

/** The words of a field sheet: directions hold for the middle day of the season. */
export const fieldSheetWords = ({ plan, days, facingDeg, turning }: FieldSheet): FieldSheetWords => {
  const middle = days[Math.floor(days.length / 2)];
  const { latitudeDeg, longitudeDeg } = plan.site;
  const north = magneticDeclination(latitudeDeg, longitudeDeg, heightM(plan.site), middle.noonMs);
  return {
    compass: compassWords(facingDeg, north),
    turning: turning === null ? [] : aimCard(cardPlace(plan.site, days), turning.period, turning.routine),
    cautions: [WIND_CAUTION, ...circuitCautions(plan)],
  };
};
