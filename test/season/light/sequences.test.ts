import { beforeAll, describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/read-plan.ts";
import { bandSentences } from "../../../lib/report/words/band-words.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { type SeasonYield, seasonYield } from "../../../lib/season/light/season-yield.ts";
import {
  drawSeasons,
  seasonBands,
  seasonTotals,
  sequenceDays,
  totalBand,
} from "../../../lib/season/light/sequences.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { type PlanSkies, skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { skyAtRatio } from "../../../lib/sky/climate/days/cloud-skies.ts";
import { shipped } from "../../sky/climate/shipped.ts";

const planWith = (sky: object, season = { from: "2027-05-01", to: "2027-06-30" }) =>
  readPlan({
    site: { latitudeDeg: 53.5, longitudeDeg: 8.6, elevationM: 3, timeZone: "Europe/Berlin" },
    season: { ...season, stepMinutes: 30 },
    sky: { source: "climate", ...sky },
    panels: [{ name: "panel", module: { powerW: 100 } }],
    stand: {
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 700 },
      ],
    },
  });

const plan = planWith({ seasons: 40 });
let planned: PlanSkies;
let yields: SeasonYield;
beforeAll(() => {
  planned = skiesOfPlan(plan, null, shipped);
  yields = seasonYield(planned.skies, panelUnits(plan.panels), settingsOf(plan));
});

const cloudOf = ({ cloud }: PlanSkies) => {
  if (cloud === null) throw new Error("no cloud");
  return cloud;
};

describe("a plan under a climate", () => {
  test("expected days lie below the clear ones, bands in order, strictly where the sun rises", () => {
    for (const { clearWh, expectedWh, band } of yields.settings) {
      for (const [day, clear] of clearWh.entries()) {
        expect(expectedWh?.[day]).toBeLessThan(clear);
        expect(band?.p10Wh[day]).toBeLessThan(band?.p50Wh[day] ?? 0);
        expect(band?.p50Wh[day]).toBeLessThan(band?.p90Wh[day] ?? 0);
        expect(band?.p90Wh[day]).toBeLessThan(1.05 * clear);
      }
    }
  });

  test("says where its cloud comes from, how sure it is, and what to beware of", () => {
    expect(planned.notes[0]).toMatch(/^Cloud from the climate of Bremerhaven, Germany \(/);
    expect(planned.notes[1]).toMatch(
      /^Expected figures: a month's light may be off by .*; the bands hold it\.$/,
    );
    expect(planned.notes[2]).toBe("Part of the light is estimated from hours of sunshine.");
  });

  test("tells when the climate outshines the clear sky of the site", () => {
    const { globalKWhM2 } = cloudOf(planned).chosen.climate;
    const bright = planWith({
      from: { kind: "months", globalKWhM2: globalKWhM2.map((value) => 1.85 * value) },
    });
    expect(skiesOfPlan(bright, null).notes.at(-1)).toMatch(
      /^The climate's .*May.* up to \d+ % brighter than a clear sky over this site: is site\.elevationM right/,
    );
    expect(planned.notes.join(" ")).not.toContain("brighter");
  });

  test("puts the climate's warmth and wind into the clear sky too", () => {
    const { clear } = planned.skies;
    expect(Math.max(...clear.sky.airC)).toBeGreaterThan(17);
    expect(Math.max(...clear.sky.windMs)).toBeLessThan(2.5);
  });
});

describe("sequenceDays", () => {
  test("agrees with running every season through sky, plane and panel", () => {
    const cloud = cloudOf(planned);
    const draws = drawSeasons(yields, cloud);
    const { sun, clear } = planned.skies;
    // One drawn season, laid out in full: each day at its own ratio.
    const season = 3;
    const columns = Array.from({ length: draws.days }, (_, day) => draws.ratio[season * draws.days + day]);
    const full = skyAtRatio(sun, clear.sky, cloud.days, 0);
    for (const [day, ratio] of columns.entries()) {
      const one = skyAtRatio(sun, clear.sky, cloud.days, ratio);
      const { first, end } = sun.days[day];
      for (const column of ["beamNormal", "diffuse", "global"] as const) {
        full[column].set(one[column].subarray(first, end), first);
      }
    }
    const ready = readySkies(sun, clear.sky, [{ weight: 1, sky: full }]);
    const direct = seasonYield(ready, panelUnits(plan.panels), settingsOf(plan));
    for (const [index, { underEachSky }] of yields.settings.entries()) {
      const looked = sequenceDays(underEachSky, cloud, draws).subarray(
        season * draws.days,
        (season + 1) * draws.days,
      );
      const exact = direct.settings[index].underEachSky[0];
      let [sumLooked, sumExact] = [0, 0];
      for (const [day, value] of exact.entries()) {
        // Straight lines between fifteen skies stand for a bent course, in which Perez's eight kinds of sky make small steps.
        expect(Math.abs(looked[day] - value)).toBeLessThan(Math.max(5, 0.05 * value));
        sumLooked += looked[day];
        sumExact += value;
      }
      expect(Math.abs(sumLooked / sumExact - 1)).toBeLessThan(0.005);
    }
  });

  test("the seasons' mean is the expected season, to 1 %", () => {
    const cloud = cloudOf(planned);
    const draws = drawSeasons(yields, cloud);
    for (const { underEachSky, expectedWh } of yields.settings) {
      const totals = seasonTotals(sequenceDays(underEachSky, cloud, draws), draws.seasons);
      const mean = totals.reduce((sum, value) => sum + value, 0) / totals.length;
      const expected = (expectedWh ?? new Float64Array()).reduce((sum, value) => sum + value, 0);
      expect(Math.abs(mean / expected - 1)).toBeLessThan(0.01);
    }
  });

  test("all settings meet the same skies: a bright season is bright for each", () => {
    const cloud = cloudOf(planned);
    const draws = drawSeasons(yields, cloud);
    const ranked = yields.settings.map(({ underEachSky }) => {
      const totals = seasonTotals(sequenceDays(underEachSky, cloud, draws), draws.seasons);
      return totals.indexOf(Math.max(...totals));
    });
    expect(new Set(ranked).size).toBe(1);
  });
});

describe("seasonBands", () => {
  test("in order, the same for the same seed, another for another", () => {
    const cloud = cloudOf(planned);
    const bands = seasonBands(yields, cloud);
    for (const { p10Wh, p50Wh, p90Wh } of bands) {
      expect(p10Wh).toBeLessThan(p50Wh);
      expect(p50Wh).toBeLessThan(p90Wh);
    }
    expect(seasonBands(yields, cloud)).toEqual(bands);
    expect(seasonBands(yields, { ...cloud, seed: 2 })).not.toEqual(bands);
  });

  test("refuses yields made under other skies", () => {
    const cloud = cloudOf(planned);
    expect(() => seasonBands(yields, { ...cloud, skies: cloud.skies.slice(1) })).toThrow(
      "seasonBands: expected yields under 14 skies, received 15",
    );
  });

  test("of a table taken at its word is narrower than of an uncertain one", () => {
    const { globalKWhM2 } = cloudOf(planned).chosen.climate;
    const sure = planWith({ from: { kind: "months", globalKWhM2 } });
    const sureSkies = skiesOfPlan(sure, null);
    const sureYields = seasonYield(sureSkies.skies, panelUnits(sure.panels), settingsOf(sure));
    const width = ({ p10Wh, p50Wh, p90Wh }: ReturnType<typeof totalBand>): number => (p90Wh - p10Wh) / p50Wh;
    const [own] = seasonBands(sureYields, cloudOf(sureSkies));
    const [uncertain] = seasonBands(yields, cloudOf(planned));
    expect(width(own)).toBeLessThan(0.97 * width(uncertain));
  });
});

describe("bandSentences", () => {
  test("speak of the darkest and the brightest month, and of the season", () => {
    const sentences = bandSentences(yields, seasonBands(yields, cloudOf(planned)));
    expect(sentences).toHaveLength(2);
    expect(sentences[0]).toMatch(
      /^With \w+ \(\d+°\) left alone: Nine (?:May|June) days in ten bring more than \d+ Wh, one in ten more than \d+ Wh\. Nine (?:May|June) days/,
    );
    expect(sentences[1]).toMatch(
      /^Nine such seasons in ten bring more than [\d.]+ kWh, half more than [\d.]+ kWh/,
    );
  });

  test("are silent where no band is known", () => {
    const clear = readPlan({ ...JSON.parse(JSON.stringify(plan)), sky: { source: "clear" } });
    const { skies } = skiesOfPlan(clear, null);
    expect(bandSentences(seasonYield(skies, panelUnits(clear.panels), settingsOf(clear)), null)).toEqual([]);
  });
});

describe("a polar season", () => {
  test("has days that bring nothing, and no NaN", () => {
    const polar = readPlan({
      site: { latitudeDeg: 71.3, longitudeDeg: -156.8, elevationM: 10 },
      season: { from: "2026-11-01", to: "2027-02-10", stepMinutes: 30 },
      sky: { source: "climate", seasons: 10 },
      panels: [{ name: "panel", module: { powerW: 100 } }],
      stand: { legs: [{ name: "long", lengthMm: 700 }] },
    });
    const skies = skiesOfPlan(polar, null, shipped);
    const night = seasonYield(skies.skies, panelUnits(polar.panels), settingsOf(polar));
    const cloud = cloudOf(skies);
    const days = sequenceDays(night.settings[0].underEachSky, cloud, drawSeasons(night, cloud));
    expect(days.some(Number.isNaN)).toBe(false);
    expect(night.settings[0].expectedWh?.[50]).toBe(0);
    expect(totalBand(seasonTotals(days, 10)).p10Wh).toBeGreaterThan(0);
  });
});
