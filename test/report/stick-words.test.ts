import { Body, Equator, Horizon, Observer, SearchHourAngle } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { aimCard, cardPlace } from "../../lib/report/words/aim-card.ts";
import { stickWords } from "../../lib/report/words/stick-words.ts";
import { seasonSun } from "../../lib/season/light/season-skies.ts";

/** The noon sun of a civil date by an independent program (astronomy-engine): bearing and altitude, degrees. */
const independentNoon = (date: string, latitude: number, longitude: number) => {
  const observer = new Observer(latitude, longitude, 0);
  const start = new Date(Date.parse(`${date}T12:00:00Z`) - (longitude / 15) * 3_600_000 - 3 * 3_600_000);
  const { time } = SearchHourAngle(Body.Sun, observer, 0, start);
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  const { azimuth, altitude } = Horizon(time, observer, ra, dec, "normal");
  return { azimuth, altitude };
};

const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);
const isoOf = (words: string): string => {
  const [day, month, year] = words.split(" ");
  return `${year}-${String(MONTHS.indexOf(month) + 1).padStart(2, "0")}-${day.padStart(2, "0")}`;
};

/** What the words say for a date: north, south, overhead. */
const saidFor = (words: string, date: string): string => {
  const stretches = [...words.matchAll(/From (\d+ \w+ \d+) to (\d+ \w+ \d+): (.*?)(?= From \d|$)/g)];
  const sentence =
    stretches.length === 0
      ? words
      : (stretches.find(([, first, last]) => isoOf(first) <= date && date <= isoOf(last))?.[3] ?? "");
  if (/within 10° of overhead/.test(sentence)) return "overhead";
  return /that is true (north|south)/.exec(sentence)?.[1] ?? "nothing";
};

describe("stickWords", () => {
  const seasons = [
    [57.75, "2027-04-01", "2027-09-30"],
    [36.78, "2027-01-01", "2027-12-31"],
    [21, "2027-03-01", "2027-10-31"],
    [12, "2027-01-01", "2027-12-31"],
    [0.35, "2027-04-01", "2027-08-31"],
    [0.35, "2027-01-01", "2027-12-31"],
    [-15, "2027-09-01", "2028-03-31"],
    [-42.15, "2027-10-01", "2028-03-31"],
  ] as const;
  test.each(seasons)(
    "the stick was right in the middle of the season only; at %f, %s to %s its noon shadow lies as said on every date",
    (latitudeDeg, from, to) => {
      const plan = readPlan({
        site: { latitudeDeg, longitudeDeg: 30, timeZone: "Etc/GMT-2" },
        season: { from, to, stepMinutes: 60 },
        panels: [{ name: "panel", module: { powerW: 100 } }],
      });
      const { days } = seasonSun(plan);
      const setting = { name: "leg", legMm: 300, tiltDeg: 25, bearingDeg: 180 };
      const part = { setting, fromMinutes: 0, toMinutes: 0 };
      const period = { name: "season", first: 0, end: days.length };
      const routine = { parts: [part], dayWh: 1 } as unknown as Parameters<typeof aimCard>[2];
      const [line] = aimCard(cardPlace(plan.site, days), period, routine);
      const words = line.byShadow ?? "";
      for (const { date } of days) {
        const { azimuth, altitude } = independentNoon(date, latitudeDeg, 30);
        const said = saidFor(words, date);
        // Within 0.02 degrees of the limit two programs may tell it apart differently.
        if (Math.abs(altitude - 80) < 0.02) continue;
        if (altitude > 80) expect([date, said]).toEqual([date, "overhead"]);
        else
          expect([date, said]).toEqual([date, Math.cos((azimuth * Math.PI) / 180) < 0 ? "south" : "north"]);
      }
    },
  );

  test("one sentence while the sun keeps to its side, nothing in a polar night", () => {
    const noon = (date: string, bearingDeg: number, altitudeDeg: number) => ({
      date,
      bearingDeg,
      altitudeDeg,
    });
    expect(
      stickWords(180, [noon("2027-05-01", 180, 50), noon("2027-05-02", 180, 51)], "13:24"),
    ).not.toContain("From ");
    expect(stickWords(180, [noon("2027-12-01", 180, -3)], "13:24")).toBeNull();
    expect(stickWords(0, [noon("2027-05-01", 180, 79), noon("2027-05-02", 180, 81)], "12:00")).toBe(
      "From 1 May 2027 to 1 May 2027: At solar noon (12:00) look along the shadow of an upright stick, from its tip to the stick's foot: " +
        "that is true south. Face the panel straight away from that line, behind you. From 2 May 2027 to 2 May 2027: " +
        "The noon sun stands within 10° of overhead: a stick cannot tell the way; go by the compass.",
    );
  });
});
