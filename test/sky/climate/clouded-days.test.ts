import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { warmthAt } from "../../../lib/sky/climate/day-temperature.ts";
import { clearYear } from "../../../lib/sky/climate/days/clear-year.ts";
import { ATOMS, addSpread, sliceMeans } from "../../../lib/sky/climate/days/clearness-spread.ts";
import { fillClimateAir } from "../../../lib/sky/climate/days/climate-air.ts";
import { type CloudSeason, cloudSeason, monthRatios } from "../../../lib/sky/climate/days/cloud-season.ts";
import { climateSkies, skyAtRatio } from "../../../lib/sky/climate/days/cloud-skies.ts";
import { type DayMean, daySpreads, ratioLimits } from "../../../lib/sky/climate/days/day-spread.ts";
import { skySequences } from "../../../lib/sky/climate/days/sequences.ts";
import {
  COMMON_YEAR,
  calendarIndex,
  holdMeansWithin,
  smoothYear,
} from "../../../lib/sky/climate/month-to-date.ts";
import { windShareAtHeight } from "../../../lib/sky/climate/wind-height.ts";
import { erbsDaily, erbsHourly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { sunsetHourAngleDeg } from "../../../lib/sun/hour-angle.ts";
import { sunColumns } from "../../../lib/sun/index.ts";
import { spencerDeclinationDeg } from "../../../lib/sun/orbit.ts";
import { counted, twelve } from "./stations.ts";

const AIR = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 200);

const seasonAt = (latitudeDeg: number, from: string, to: string) => {
  const sun = sunColumns({ latitudeDeg, longitudeDeg: 5, timeZone: "Etc/GMT-1" }, { from, to }, 60);
  return { sun, clear: clearSkyColumns(sun, AIR, 0.2, { airC: 10, windMs: 1 }) };
};

const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;

const day = (over: Partial<DayMean> = {}): DayMean => ({
  latitudeDeg: 50,
  clearClearness: 0.72,
  ratio: 0.6,
  uncertainty: 0,
  ...over,
});

describe("ratioLimits, by hand", () => {
  test("from the darkest day, a clearness of 0.05, to the clear one", () => {
    expect(ratioLimits(day())).toEqual([0.05 / 0.72, 1]);
    // Polar stratus: 0.2 from 70 degrees on, half-way at 65.
    expect(ratioLimits(day({ latitudeDeg: -75 }))[0]).toBeCloseTo(0.2 / 0.72, 12);
    expect(ratioLimits(day({ latitudeDeg: 65 }))[0]).toBeCloseTo(0.125 / 0.72, 12);
    expect(ratioLimits(day({ latitudeDeg: 60 }))[0]).toBeCloseTo(0.05 / 0.72, 12);
  });

  test("a nearly clear month has days up to 3 % above the clear one; a clear month has not", () => {
    expect(ratioLimits(day({ ratio: 0.8 }))[1]).toBe(1);
    expect(ratioLimits(day({ ratio: 0.85 }))[1]).toBeCloseTo(1.015, 12);
    expect(ratioLimits(day({ ratio: 0.93 }))[1]).toBeCloseTo(1.03, 12);
    expect(ratioLimits(day({ ratio: 0.985 }))[1]).toBeCloseTo(1.015, 12);
    expect(ratioLimits(day({ ratio: 1 }))[1]).toBe(1);
  });

  test("a mean beyond them is its own limit", () => {
    expect(ratioLimits(day({ ratio: 0.01 }))[0]).toBe(0.01);
    expect(ratioLimits(day({ ratio: 1.2 }))[1]).toBe(1.2);
  });
});

describe("daySpreads, by hand", () => {
  const slicesOf = (of: DayMean, count = 2): readonly number[] => {
    const out = new Float64Array(count);
    daySpreads().slices(of, out);
    return [...out];
  };

  test("Bendt's shape at a mean of one half is flat: halves at a quarter and three quarters", () => {
    // Mean half-way between the darkest day (0.05 / 0.5 = 0.1) and the clear one: 0.55.
    const [low, high] = slicesOf(day({ latitudeDeg: 40, clearClearness: 0.5, ratio: 0.55 }));
    expect(low).toBeCloseTo(0.1 + 0.9 * 0.25, 3);
    expect(high).toBeCloseTo(0.1 + 0.9 * 0.75, 3);
  });

  test("the tropics take Saunier's shape, x (1 - x): halves at 5/16 and 11/16", () => {
    // Mean of x below one half under the density 6 x (1 - x): 2 (2 x 1/24 - 3/2 x 1/16) x ... = 5/16.
    const [low, high] = slicesOf(day({ latitudeDeg: 10, clearClearness: 0.5, ratio: 0.55 }));
    expect(low).toBeCloseTo(0.1 + (0.9 * 5) / 16, 3);
    expect(high).toBeCloseTo(0.1 + (0.9 * 11) / 16, 3);
    // Half of each at 20 degrees: a mixture of the two densities, whose halves' means are the means of theirs.
    const [mixed] = slicesOf(day({ latitudeDeg: -20, clearClearness: 0.5, ratio: 0.55 }));
    expect(mixed).toBeCloseTo(0.1 + 0.9 * (0.5 * 0.25 + (0.5 * 5) / 16), 3);
    const polar = slicesOf(day({ latitudeDeg: 80, clearClearness: 0.5, ratio: 0.7 }));
    expect(polar[0]).toBeCloseTo(0.4 + (0.6 * 5) / 16, 3);
  });

  test("days that are all alike: no room between the limits", () => {
    expect(slicesOf(day({ ratio: 1.2, clearClearness: 0.04 }))).toEqual([1.2, 1.2]);
  });

  test("uncertainty is one standard deviation of the mean, in five steps", () => {
    const columns = [-2, -1, 0, 1, 2].map(() => new Float64Array(4));
    daySpreads().slicesByUncertainty(day({ uncertainty: 0.1 }), columns);
    columns.forEach((column, step) => {
      expect(mean(column)).toBeCloseTo(0.6 * (1 + 0.1 * (step - 2)), 9);
    });
    // Where the clear day cuts the brightest, all move so that the weighted mean stays.
    daySpreads().slicesByUncertainty(day({ ratio: 0.95, uncertainty: 0.1 }), columns);
    const weights = [0.0545, 0.2442, 0.4026, 0.2442, 0.0545];
    const weighted = columns.reduce((sum, column, step) => sum + weights[step] * mean(column), 0);
    expect(weighted).toBeCloseTo(0.95, 9);
    expect(mean(columns[4])).toBeLessThanOrEqual(1.03 + 1e-9);
    expect(mean(columns[0])).toBeGreaterThan(0.76);
  });
});

describe("addSpread and sliceMeans", () => {
  test("masses are added with their weight, and means off the table are mixed", () => {
    const masses = new Float64Array(ATOMS).fill(0.5);
    addSpread("bendt", 0.5, 2, masses);
    // Flat: one of 128 cells, half of one at the ends.
    expect(masses[60]).toBeCloseTo(0.5 + 2 / 128, 12);
    expect(masses[0]).toBeCloseTo(0.5 + 1 / 128, 12);
    expect(() => addSpread("saunier", -0.01, 1, masses)).toThrow("received -0.01");
    const ends = new Float64Array(ATOMS);
    addSpread("saunier", 1, 0.75, ends);
    addSpread("saunier", 0, 0.25, ends);
    expect([ends[0], ends[ATOMS - 1]]).toEqual([0.25, 0.75]);
  });

  test("slices of a few masses, by hand", () => {
    const masses = new Float64Array(ATOMS);
    // A quarter at 0, a quarter at 1/2, half at 1: thirds are (0.25 x 0 + 1/12 x 1/2), (1/6 x 1/2 + 1/6), 1/3 x 1.
    masses[0] = 0.25;
    masses[64] = 0.25;
    masses[128] = 0.5;
    const out = new Float64Array(3).fill(9);
    sliceMeans(masses, out);
    expect(out[0]).toBeCloseTo(3 / 24, 12);
    expect(out[1]).toBeCloseTo(3 * (1 / 12 + 1 / 6), 12);
    expect(out[2]).toBeCloseTo(1, 12);
    const whole = new Float64Array(1);
    sliceMeans(masses, whole);
    expect(whole[0]).toBeCloseTo(0.625, 12);
  });
});

describe("months to dates", () => {
  test("the calendar of a common year", () => {
    expect(COMMON_YEAR).toHaveLength(365);
    expect(COMMON_YEAR[0]).toEqual({ month: 1, into: 0.5 / 31 });
    expect(COMMON_YEAR[58]).toEqual({ month: 2, into: 27.5 / 28 });
    expect(["2027-02-28", "2028-02-29", "2027-03-01", "2027-11-30"].map(calendarIndex)).toEqual([
      58, 58, 59, 333,
    ]);
  });

  test("one bright month stands out, keeps its mean and leaves its neighbours theirs", () => {
    const values = smoothYear(twelve(1).with(6, 2));
    const july = mean(values.subarray(181, 212));
    expect(july).toBeCloseTo(2, 9);
    expect(mean(values.subarray(151, 181))).toBeCloseTo(1, 9);
    expect(values[196]).toBeGreaterThan(2.1);
    // Six months away next to nothing of it is felt.
    expect(values[0]).toBeCloseTo(1, 2);
  });

  test("months that weigh nothing go half-way between their neighbours' knots", () => {
    const weights = Float64Array.from(COMMON_YEAR, ({ month }) => (month === 7 ? 0 : 1));
    const values = smoothYear(twelve(4).with(6, 99), weights);
    for (const value of values) expect(value).toBeCloseTo(4, 6);
  });

  test("days are held between their bounds, and the rest of the month makes up for it", () => {
    const even = new Float64Array(365).fill(1);
    const values = Float64Array.from(COMMON_YEAR, ({ into }) => into);
    const [least, most] = [new Float64Array(365), new Float64Array(365).fill(0.6)];
    holdMeansWithin(values, twelve(0.4), even, least, most);
    // January runs from 0 to 1; moved by s and held within 0 and 0.6 its mean is 0.18 + 0.6 (0.4 + s) = 0.4: s = -1/30.
    expect(mean(values.subarray(0, 31))).toBeCloseTo(0.4, 9);
    expect(Math.max(...values)).toBe(0.6);
    expect(values[10]).toBeCloseTo(10.5 / 31 - 1 / 30, 3);
    // Where the bounds leave no room the days stand at the bound; days without weight are left alone.
    const dark = even.with(0, 0);
    const tight = new Float64Array(365).fill(0.5).with(0, 7);
    holdMeansWithin(tight, twelve(0.9), dark, least, most);
    expect([tight[0], tight[1], tight[364]]).toEqual([7, 0.6, 0.6]);
    holdMeansWithin(tight, twelve(-5), even, new Float64Array(365).fill(0.1), most);
    expect([tight[1], tight[364]]).toEqual([0.1, 0.1]);
  });
});

describe("clearYear", () => {
  test("is the clear sky's own days, in half hours, and what arrives above the air", () => {
    const place = { latitudeDeg: 50, longitudeDeg: 5, timeZone: "Etc/GMT-1" };
    const { clearKWhM2, topKWhM2 } = clearYear(place, AIR, 0.2);
    expect(clearKWhM2).toHaveLength(365);
    const { sun, clear } = seasonAt(50, "2027-06-20", "2027-06-21");
    const { first, end } = sun.days[0];
    let [light, top] = [0, 0];
    for (let row = first; row < end; row += 1) {
      light += (clear.global[row] * sun.hours[row]) / 1000;
      top += (clear.extraterrestrial[row] * sun.up[row] * sun.hours[row]) / 1000;
    }
    // Half hours against hours: a part in a thousand.
    expect(clearKWhM2[170] / light).toBeCloseTo(1, 2);
    expect(topKWhM2[170] / top).toBeCloseTo(1, 2);
    expect(Math.max(...clearKWhM2)).toBeLessThan(Math.max(...topKWhM2));
  });
});

describe("cloudSeason", () => {
  const place = { latitudeDeg: 50, longitudeDeg: 5, timeZone: "Etc/GMT-1" };
  const year = clearYear(place, AIR, 0.2);
  const clearMonths = Array.from({ length: 12 }, (_, month) =>
    mean(year.clearKWhM2.filter((_value, index) => COMMON_YEAR[index].month === month + 1)),
  );

  test("each month's light over that of its clear days; nothing in months without sun", () => {
    const ratios = monthRatios(
      { globalKWhM2: clearMonths.map((value, month) => value * (0.3 + 0.05 * month)) },
      year,
    );
    ratios.forEach((ratio, month) => {
      expect(ratio).toBeCloseTo(0.3 + 0.05 * month, 9);
    });
    const dark = { ...year, clearKWhM2: year.clearKWhM2.map((value, index) => (index < 31 ? 0 : value)) };
    expect(monthRatios({ globalKWhM2: twelve(3) }, dark)[0]).toBe(0);
  });

  test("an even share of the clear sky is that share on every day, with the month's uncertainty", () => {
    const { sun, clear } = seasonAt(50, "2027-06-29", "2027-07-02");
    const climate = {
      globalKWhM2: clearMonths.map((value) => 0.6 * value),
      uncertainty: { month: counted(0.01, 0.01), year: 0 },
    };
    const { days, latitudeDeg } = cloudSeason(sun, clear, year, climate, 50);
    expect(latitudeDeg).toBe(50);
    days.forEach((each, index) => {
      const { first, end } = sun.days[index];
      let [light, top] = [0, 0];
      for (let row = first; row < end; row += 1) {
        light += clear.global[row] * sun.hours[row];
        top += clear.extraterrestrial[row] * sun.up[row] * sun.hours[row];
      }
      // Hours here against the half hours of the year: two parts in a thousand.
      expect((each?.ratio ?? 0) / 0.6).toBeCloseTo(1, 2);
      expect(each?.clearClearness).toBeCloseTo(light / top, 9);
      expect(each?.uncertainty).toBeCloseTo(index < 2 ? 0.06 : 0.07, 12);
    });
  });

  test("a day without sun is none", () => {
    const { sun, clear } = seasonAt(80, "2027-12-20", "2027-12-21");
    const polarYear = clearYear({ ...place, latitudeDeg: 80 }, AIR, 0.2);
    const { days } = cloudSeason(
      sun,
      clear,
      polarYear,
      { globalKWhM2: twelve(0), uncertainty: NO_UNCERTAINTY },
      80,
    );
    expect(days).toEqual([null, null]);
  });
});

describe("skyAtRatio and climateSkies", () => {
  const { sun, clear } = seasonAt(50, "2027-06-20", "2027-06-22");
  const cloud: CloudSeason = {
    latitudeDeg: 50,
    days: [day(), null, day({ ratio: 0.8, uncertainty: 0.1 })],
  };

  test("beam is the mean of what the hourly and the daily correlation of Erbs make of it", () => {
    const ratio = 0.5;
    const sky = skyAtRatio(sun, clear, cloud, ratio);
    const { first, end, dayOfYear } = sun.days[0];
    const sunset = sunsetHourAngleDeg(50, spencerDeclinationDeg(dayOfYear));
    const daily = (ratio * (1 - erbsDaily(ratio * 0.72, sunset))) / (1 - erbsDaily(0.72, sunset));
    for (let row = first; row < end; row += 1) {
      const clearness = clear.global[row] / (clear.extraterrestrial[row] * sun.up[row]);
      const hourly = (ratio * (1 - erbsHourly(ratio * clearness))) / (1 - erbsHourly(clearness));
      const beam = Math.min(
        ((hourly + daily) / 2) * clear.beamNormal[row],
        (ratio * clear.global[row]) / sun.up[row],
      );
      expect(sky.global[row]).toBeCloseTo(ratio * clear.global[row], 9);
      expect(sky.beamNormal[row]).toBeCloseTo(beam, 9);
      expect(sky.diffuse[row]).toBeCloseTo(ratio * clear.global[row] - beam * sun.up[row], 9);
    }
    // A day of which nothing is known is dark; what surrounds the light is the clear sky's.
    const unknown = sun.days[1];
    expect(Math.max(...sky.global.subarray(unknown.first, unknown.end))).toBe(0);
    expect(sky.airC).toBe(clear.airC);
    expect(sky.albedo).toBe(clear.albedo);
  });

  test("brighter than the clear sky: the beam grows by five per cent at most", () => {
    const noon = (sun.days[0].first + sun.days[0].end) >> 1;
    const [a, b] = [1.03, 1.3].map((ratio) => skyAtRatio(sun, clear, cloud, ratio).beamNormal[noon]);
    expect(a / clear.beamNormal[noon]).toBeLessThanOrEqual(1.03 + 1e-12);
    expect(b / clear.beamNormal[noon]).toBeCloseTo(1.05, 9);
  });

  test("equally likely skies, darkest first, whose mean is the climate's", () => {
    const skies = climateSkies(sun, clear, cloud, 5);
    expect(skies.map(({ weight }) => weight)).toEqual([0.2, 0.2, 0.2, 0.2, 0.2]);
    expect(mean(skies.map(({ ratio }) => ratio[0]))).toBeCloseTo(0.6, 9);
    expect(mean(skies.map(({ ratio }) => ratio[2]))).toBeCloseTo(0.8, 9);
    for (const { ratio } of skies) expect(ratio[1]).toBeNaN();
    const column = skies.map(({ ratio }) => ratio[0]);
    expect([...column].sort((a, b) => a - b)).toEqual(column);
    const row = sun.days[0].first + 5;
    for (const { sky, ratio } of skies) expect(sky.global[row]).toBeCloseTo(ratio[0] * clear.global[row], 9);
    expect(climateSkies(sun, clear, cloud)).toHaveLength(15);
  });
});

describe("skySequences, small", () => {
  const { sun } = seasonAt(50, "2027-06-29", "2027-07-02");
  const cloud: CloudSeason = { latitudeDeg: 50, days: [day(), day(), null, day({ ratio: 0.7 })] };

  test("on each day the seasons take all of its slices, each once; a day without sun none", () => {
    const { ratio, seasons, days } = skySequences(sun.days, cloud, NO_UNCERTAINTY, { seasons: 8, seed: 3 });
    expect([seasons, days]).toEqual([8, 4]);
    const slices = new Float64Array(8);
    daySpreads().slices(day(), slices);
    const drawn = Array.from({ length: 8 }, (_, season) => ratio[season * 4]).sort((a, b) => a - b);
    drawn.forEach((value, slice) => {
      // Kept to a ten-millionth.
      expect(Math.abs(value - slices[slice])).toBeLessThanOrEqual(0.5e-7);
      expect(Math.abs(value * 1e7 - Math.round(value * 1e7))).toBeLessThan(1e-6);
    });
    for (let season = 0; season < 8; season += 1) expect(ratio[season * 4 + 2]).toBeNaN();
  });

  test("a memory near one keeps the order of the seasons, one near minus one turns it round", () => {
    const ranks = (memory: number, at: number): readonly number[] => {
      const { ratio } = skySequences(sun.days, cloud, NO_UNCERTAINTY, { seasons: 6, seed: 3, memory });
      const column = Array.from({ length: 6 }, (_, season) => ratio[season * 4 + at]);
      return column.map((value) => column.filter((other) => other < value).length);
    };
    expect(ranks(0.999999, 1)).toEqual(ranks(0.999999, 0));
    expect(ranks(-0.999999, 1)).toEqual(ranks(-0.999999, 0).map((rank) => 5 - rank));
    expect(ranks(0, 1)).not.toEqual(ranks(0, 0));
  });

  test("uncertainty moves whole months: seasons with a year's error in common, months with their own", () => {
    const months = seasonAt(50, "2027-06-29", "2027-07-02").sun.days;
    const uncertain: CloudSeason = { latitudeDeg: 50, days: months.map(() => day({ uncertainty: 0.1 })) };
    const drawn = (month: number, year: number) =>
      skySequences(months, uncertain, { month: twelve(month), year }, { seasons: 400, seed: 5, memory: 0 });
    /** Correlation over the seasons of a day of June with one of July. */
    const between = ({ ratio, seasons }: ReturnType<typeof drawn>): number => {
      const [june, july] = [0, 3].map((at) =>
        Array.from({ length: seasons }, (_, season) => ratio[season * 4 + at]),
      );
      const [a, b] = [mean(june), mean(july)];
      const cov = mean(june.map((value, season) => (value - a) * (july[season] - b)));
      const own = (values: readonly number[], middle: number) =>
        mean(values.map((value) => (value - middle) ** 2));
      return cov / Math.sqrt(own(june, a) * own(july, b));
    };
    // The day's own scatter is 0.26 of light, the uncertainty 0.06: their share of the variance is some 5 %.
    expect(between(drawn(0.1, 0.1))).toBeGreaterThan(between(drawn(0.1, 0)));
    for (const { ratio } of [drawn(0.1, 0.1), drawn(0.1, 0)]) {
      expect(mean(ratio)).toBeCloseTo(0.6, 2);
      expect(ratio.some(Number.isNaN)).toBe(false);
    }
    // A year's uncertainty greater than the months' own is all of it.
    expect(
      skySequences(months, uncertain, { month: twelve(0.05), year: 0.2 }, { seasons: 1 }).ratio,
    ).toHaveLength(4);
  });

  test("refusals say what was received", () => {
    expect(() => skySequences(sun.days, cloud, NO_UNCERTAINTY, { seasons: 1.5 })).toThrow(
      "skySequences: expected a whole number of seasons, at least 1, received 1.5",
    );
    expect(() => skySequences(sun.days, cloud, NO_UNCERTAINTY, { memory: -1 })).toThrow(
      "skySequences: expected a memory between -1 and 1, received -1",
    );
    const told: (readonly [number, number])[] = [];
    skySequences(sun.days, cloud, NO_UNCERTAINTY, {
      seasons: 1,
      onProgress: (done, days) => told.push([done, days]),
    });
    expect(told).toEqual([
      [1, 4],
      [2, 4],
      [3, 4],
      [4, 4],
    ]);
  });
});

describe("fillClimateAir, row by row", () => {
  test("the air between the date's low and high by the hour, the wind brought down, never below none", () => {
    const { sun } = seasonAt(50, "2027-06-29", "2027-07-02");
    const out = { airC: new Float64Array(sun.length), windMs: new Float64Array(sun.length) };
    const [lowC, highC] = [counted(0), counted(10, 2)];
    fillClimateAir(sun, { air: { lowC, highC }, wind: { ms: counted(1), heightM: 10 } }, out);
    const [lows, highs, winds] = [smoothYear(lowC), smoothYear(highC), smoothYear(counted(1))];
    for (const { date, first, end, noonMs } of sun.days) {
      const at = calendarIndex(date);
      for (let row = first; row < end; row += 1) {
        const hour = 12 + (sun.timeMs[row] - noonMs) / 3_600_000;
        expect(out.airC[row]).toBeCloseTo(lows[at] + (highs[at] - lows[at]) * warmthAt(hour), 9);
        expect(out.windMs[row]).toBeCloseTo(winds[at] * windShareAtHeight(10, 0.5), 9);
      }
    }
    fillClimateAir(sun, { air: null, wind: { ms: twelve(5).with(5, 0).with(6, 0), heightM: 10 } }, out);
    expect(Math.min(...out.windMs)).toBeGreaterThanOrEqual(0);
  });
});
