import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { type ClimateUncertainty, NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { clearYear } from "../../../lib/sky/climate/days/clear-year.ts";
import { cloudSeason } from "../../../lib/sky/climate/days/cloud-season.ts";
import { climateSkies, skyAtRatio } from "../../../lib/sky/climate/days/cloud-skies.ts";
import { BRIGHTEST_ABOVE_CLEAR } from "../../../lib/sky/climate/days/day-spread.ts";
import { skySequences } from "../../../lib/sky/climate/days/sequences.ts";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { COMMON_YEAR } from "../../../lib/sky/climate/month-to-date.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import { erbsHourly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

/** A site, its clear sky through a year of 365 days, and what its clear days come to by month. */
const siteAt = (latitudeDeg: number) => {
  const place = { latitudeDeg, longitudeDeg: 5, timeZone: "Etc/GMT-1" };
  const air = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 200);
  const sun = sunColumns(place, { from: "2027-01-01", to: "2027-12-31" }, 30);
  const clear = clearSkyColumns(sun, air, 0.2, { airC: 10, windMs: 1 });
  const year = clearYear(place, air, 0.2);
  const clearMeans = Array.from({ length: 12 }, (_, month) => {
    const own = COMMON_YEAR.flatMap((day, index) =>
      day.month === month + 1 ? [year.clearKWhM2[index]] : [],
    );
    return own.reduce((sum, value) => sum + value, 0) / own.length;
  });
  const cloudOf = (globalKWhM2: readonly number[], uncertainty: ClimateUncertainty = NO_UNCERTAINTY) =>
    cloudSeason(sun, clear, year, { globalKWhM2, uncertainty }, latitudeDeg);
  return { latitudeDeg, sun, clear, clearMeans, cloudOf };
};

type Site = ReturnType<typeof siteAt>;

const monthlyGlobal = ({ sun }: Pick<Site, "sun">, global: Float64Array): Float64Array => {
  const sums = new Float64Array(12);
  const counts = new Float64Array(12);
  for (const { month, first, end } of sun.days) {
    counts[month - 1]++;
    for (let row = first; row < end; row++) sums[month - 1] += (global[row] * sun.hours[row]) / 1000;
  }
  return sums.map((sum, month) => sum / counts[month]);
};

const meanGlobal = (skies: readonly { readonly weight: number; readonly sky: SkyColumns }[]): Float64Array =>
  skies.reduce(
    (sum, { weight, sky }) => sum.map((value, row) => value + weight * sky.global[row]),
    new Float64Array(skies[0].sky.length),
  );

let sites: readonly Site[] = [];
beforeAll(() => {
  sites = [-54, -12, 0, 20, 47, 71].map(siteAt);
});

/** Twelve means as a share of the clear sky that wanders through the year. */
const shares = fc.array(fc.double({ min: 0.25, max: 0.9, noNaN: true }), { minLength: 12, maxLength: 12 });
const anySite = fc.integer({ min: 0, max: 5 });

describe("climateSkies", () => {
  test("keep every month's mean to 0.1 %", () => {
    fc.assert(
      fc.property(anySite, shares, (index, parts) => {
        const site = sites[index];
        const means = site.clearMeans.map((clear, month) => clear * parts[month]);
        const found = monthlyGlobal(
          site,
          meanGlobal(climateSkies(site.sun, site.clear, site.cloudOf(means))),
        );
        for (const [month, mean] of means.entries()) {
          expect(Math.abs(found[month] - mean)).toBeLessThanOrEqual(0.001 * mean);
        }
      }),
      { numRuns: 12 },
    );
  });

  test("uncertainty leaves the means alone", () => {
    const [, , , , site] = sites;
    const means = site.clearMeans.map((clear) => 0.6 * clear);
    const cloud = site.cloudOf(means, { month: Array(12).fill(0.15), year: 0.07 });
    const found = monthlyGlobal(site, meanGlobal(climateSkies(site.sun, site.clear, cloud)));
    for (const [month, mean] of means.entries()) expect(found[month] / mean).toBeCloseTo(1, 6);
  });

  test("hold global = beam x sin(altitude) + diffuse, nothing negative, no more beam than the clear sky's allowance", () => {
    for (const { sun, clear, clearMeans, cloudOf } of sites) {
      const skies = climateSkies(sun, clear, cloudOf(clearMeans.map((mean) => 0.65 * mean)));
      for (const { sky } of skies) {
        const each = (of: (row: number) => number): number =>
          sky.global.reduce((most, _, row) => Math.max(most, of(row)), 0);
        expect(each((row) => -sky.beamNormal[row])).toBe(0);
        expect(each((row) => -sky.diffuse[row])).toBeLessThan(1e-9);
        expect(
          each((row) => Math.abs(sky.beamNormal[row] * sun.up[row] + sky.diffuse[row] - sky.global[row])),
        ).toBeLessThan(1e-9);
        expect(
          each((row) => sky.beamNormal[row] - (1 + BRIGHTEST_ABOVE_CLEAR) * clear.beamNormal[row]),
        ).toBeLessThan(1e-9);
      }
    }
  });

  test("go from dark to bright: each sky has at least the light of the one before, on every day", () => {
    for (const { sun, clear, clearMeans, cloudOf } of sites) {
      const skies = climateSkies(sun, clear, cloudOf(clearMeans.map((mean) => 0.6 * mean)));
      for (let slice = 1; slice < skies.length; slice++) {
        const [darker, brighter] = [skies[slice - 1].sky.global, skies[slice].sky.global];
        expect(darker.findIndex((light, row) => light > brighter[row] + 1e-9)).toBe(-1);
      }
    }
  });

  test("a climate of clear days gives the clear sky", () => {
    for (const site of sites.slice(0, 5)) {
      for (const { sky } of climateSkies(site.sun, site.clear, site.cloudOf(site.clearMeans))) {
        // Ratios are 1 in every month, so the curve between them is 1 throughout.
        const { global } = site.clear;
        expect(
          sky.global.findIndex((light, row) => Math.abs(light - global[row]) > 0.001 * global[row] + 0.01),
        ).toBe(-1);
      }
      const found = monthlyGlobal(
        site,
        meanGlobal(climateSkies(site.sun, site.clear, site.cloudOf(site.clearMeans))),
      );
      const clear = monthlyGlobal(site, site.clear.global);
      for (const [month, light] of clear.entries()) expect(found[month] / light).toBeCloseTo(1, 4);
    }
  });

  test("more cloud never raises the global light of a month", () => {
    fc.assert(
      fc.property(anySite, shares, fc.double({ min: 0.3, max: 1, noNaN: true }), (index, parts, less) => {
        const site = sites[index];
        const bright = site.clearMeans.map((clear, month) => clear * parts[month]);
        const dim = bright.map((mean) => mean * less);
        const [more, fewer] = [bright, dim].map((means) =>
          monthlyGlobal(site, meanGlobal(climateSkies(site.sun, site.clear, site.cloudOf(means)))),
        );
        for (const [month, light] of fewer.entries()) expect(light).toBeLessThanOrEqual(more[month] + 1e-9);
      }),
      { numRuns: 8 },
    );
  });

  test("days without sun are dark and have no ratio", () => {
    const polar = sites[5];
    const skies = climateSkies(
      polar.sun,
      polar.clear,
      polar.cloudOf(polar.clearMeans.map((clear) => 0.6 * clear)),
    );
    const dark = polar.sun.days.findIndex(({ first, end }) => first === end);
    expect(dark).toBeGreaterThanOrEqual(0);
    expect(skies[0].ratio[dark]).toBeNaN();
    expect(skies[0].sky.global.some(Number.isNaN)).toBe(false);
  });
});

describe("twilight brighter than the clear sky", () => {
  const polar = () => sites[5];
  const cloud = () => polar().cloudOf(polar().clearMeans.map((clear) => 0.6 * clear));
  const beamsAt = (ratio: number) => skyAtRatio(polar().sun, polar().clear, cloud(), ratio).beamNormal;

  test("takes its beam from its own clearness by the hourly correlation, never more than the clear sky's allowance", () => {
    const { sun, clear } = polar();
    const { beamNormal, global } = skyAtRatio(sun, clear, cloud(), 1.3);
    let low = 0;
    for (let row = 0; row < sun.length; row++) {
      const clearness = global[row] / (clear.extraterrestrial[row] * sun.up[row]);
      const own = (global[row] * (1 - erbsHourly(clearness))) / sun.up[row];
      expect(beamNormal[row]).toBeLessThanOrEqual(Math.min(1.05 * clear.beamNormal[row], own) + 1e-9);
      if (own < clear.beamNormal[row]) {
        expect(beamNormal[row]).toBeCloseTo(own, 6);
        low++;
      }
    }
    // The rows of a sun a few degrees up, of which a polar year has many.
    expect(low).toBeGreaterThan(500);
  });

  test("goes over from the clear sky's beam without a step", () => {
    for (const ratio of [1.05, 1.1, 1.15]) {
      const [before, after] = [beamsAt(ratio - 1e-5), beamsAt(ratio + 1e-5)];
      // A beam of up to 1000 W/m2 goes over within a tenth of the ratio: by 0.2 W/m2 at most in this step.
      expect(before.findIndex((beam, row) => Math.abs(beam - after[row]) > 0.2)).toBe(-1);
    }
  });

  test("leaves days up to 1.05 times the clear day's light as they are", () => {
    const { clear } = polar();
    const beams = beamsAt(1.05);
    expect(beams.findIndex((beam, row) => beam < clear.beamNormal[row] - 1e-9)).toBe(-1);
  });
});

describe("skyAtRatio", () => {
  test("at 1 is the clear sky, at 0 darkness", () => {
    const [, , , , site] = sites;
    const cloud = site.cloudOf(site.clearMeans.map((clear) => 0.6 * clear));
    const clear = skyAtRatio(site.sun, site.clear, cloud, 1);
    const dark = skyAtRatio(site.sun, site.clear, cloud, 0);
    for (let row = 0; row < clear.length; row += 13) {
      expect(clear.beamNormal[row]).toBeCloseTo(site.clear.beamNormal[row], 9);
      expect(clear.diffuse[row]).toBeCloseTo(site.clear.diffuse[row], 9);
      expect([dark.beamNormal[row], dark.diffuse[row]]).toEqual([0, 0]);
    }
  });
});

describe("skySequences", () => {
  const draw = (
    site: Site,
    options: { seasons?: number; seed?: number } = {},
    uncertainty: ClimateUncertainty = NO_UNCERTAINTY,
  ) =>
    skySequences(
      site.sun.days,
      site.cloudOf(
        site.clearMeans.map((clear) => 0.6 * clear),
        uncertainty,
      ),
      uncertainty,
      options,
    );

  test("the same seed gives the same bytes, another seed other seasons", () => {
    const one = draw(sites[4], { seasons: 20, seed: 5 });
    expect(draw(sites[4], { seasons: 20, seed: 5 }).ratio).toEqual(one.ratio);
    expect(draw(sites[4], { seasons: 20, seed: 6 }).ratio).not.toEqual(one.ratio);
  });

  test("each date's mean over the seasons is the climate's", () => {
    const [, , , , site] = sites;
    const cloud = site.cloudOf(site.clearMeans.map((clear) => 0.6 * clear));
    const { ratio, seasons, days } = draw(site);
    expect(seasons).toBe(200);
    for (let day = 0; day < days; day += 17) {
      let sum = 0;
      for (let season = 0; season < seasons; season++) sum += ratio[season * days + day];
      expect(sum / seasons).toBeCloseTo(cloud.days[day]?.ratio ?? Number.NaN, 7);
    }
  });

  test("under uncertainty, months keep their means to 1 % and whole seasons scatter more", () => {
    const [, , , , site] = sites;
    const uncertainty = { month: Array(12).fill(0.11), year: 0.07 };
    const totals = (ratio: Float64Array, seasons: number, days: number): Float64Array =>
      Float64Array.from({ length: seasons }, (_, season) =>
        ratio.subarray(season * days, (season + 1) * days).reduce((sum, value) => sum + value, 0),
      );
    const spread = (values: Float64Array): number => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length) / mean;
    };
    const sure = draw(site);
    const uncertain = draw(site, {}, uncertainty);
    const [sureTotals, uncertainTotals] = [sure, uncertain].map(({ ratio, seasons, days }) =>
      totals(ratio, seasons, days),
    );
    const mean = (values: Float64Array): number =>
      values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(uncertainTotals) / mean(sureTotals)).toBeCloseTo(1, 2);
    expect(spread(uncertainTotals)).toBeGreaterThan(spread(sureTotals));
    // The year's own share of the uncertainty is 7 %; the months' own parts add 0.085 / sqrt(12) to it.
    expect(spread(uncertainTotals)).toBeCloseTo(
      Math.hypot(0.07, 0.085 / Math.sqrt(12), spread(sureTotals)),
      1.7,
    );
  });

  test("refuses no seasons", () => {
    expect(() => draw(sites[4], { seasons: 0 })).toThrow("skySequences: expected a whole number of seasons");
  });

  test("tells its progress day by day", () => {
    const seen: number[] = [];
    const [, , , , site] = sites;
    const cloud = site.cloudOf(site.clearMeans.map((clear) => 0.6 * clear));
    skySequences(site.sun.days, cloud, NO_UNCERTAINTY, { seasons: 2, onProgress: (done) => seen.push(done) });
    expect([seen.length, seen[0], seen.at(-1)]).toEqual([365, 1, 365]);
  });
});

describe("monthSuns", () => {
  test("agrees with the months of the sun's own path", () => {
    for (const { latitudeDeg, sun } of sites) {
      const top = new Float64Array(sun.length).map((_, row) => sun.up[row]);
      const hours = monthlyGlobal({ sun }, top.fill(1000));
      for (const [month, { dayHours }] of monthSuns(latitudeDeg).entries()) {
        // Refraction lengthens the day, by more where the sun rises at a slant.
        expect(hours[month] - dayHours).toBeGreaterThan(-0.05);
        expect(hours[month] - dayHours).toBeLessThan(Math.abs(latitudeDeg) > 66 ? 1.2 : 0.3);
      }
    }
  });
});
