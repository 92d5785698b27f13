/** What a remark about a build is about. */
export type RemarkAbout =
  | "input voltage"
  | "input current"
  | "branch fuses"
  | "charging current"
  | "panel cable"
  | "battery cable"
  | "clipped"
  | "too low"
  | "wasted volts"
  | "hot"
  | "unlike volts";

/** Something about a circuit that its owner must know before building or believing it. */
export interface CircuitRemark {
  /** `danger` can break or burn something; `loss` throws light away. */
  readonly kind: "danger" | "loss";
  readonly about: RemarkAbout;
  readonly words: string;
}

export const remark = (kind: CircuitRemark["kind"], about: RemarkAbout, words: string): CircuitRemark => ({
  kind,
  about,
  words,
});
