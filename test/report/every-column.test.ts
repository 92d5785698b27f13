import { describe, expect, test } from "vitest";
import type { Worth } from "../../lib/plan/worth.ts";
import {
  aimsTable,
  bandsTable,
  batteryTable,
  type ControllerGain,
  type CurveToShow,
  controllerGainTable,
  csvText,
  curveTable,
  dayTable,
  legSetsTable,
  rulesTable,
  seasonTable,
  swapsTable,
  type Table,
  toleranceTable,
  wiringTable,
  worthTable,
} from "../../lib/report/index.ts";
import { tiltMapTable } from "../../lib/report/table/tilt-map-table.ts";
import { cardPlace } from "../../lib/report/words/aim-card.ts";
import type {
  BatterySeason,
  DayCurves,
  LegsAnswer,
  Reaim,
  RuleOfThumb,
  SeasonYield,
  SettingFacts,
  SwapsAnswer,
  TiltBand,
  TiltLadder,
  WiringAnswer,
  WorthAnswer,
} from "../../lib/season/index.ts";

/**
 * Which value stands in which column, of every table: answers written by hand in which no two numbers are alike, so that
 * a column that reads its neighbour shows it.
 */

/** An answer of which a test states what its table reads. */
const handMade = <Answer>(stated: unknown): Answer => stated as Answer;

/** A table as its CSV has it: one record a row, by header. */
const records = <Row>(table: Table<Row>): readonly Readonly<Record<string, string>>[] => {
  const [head, ...rows] = csvText(table)
    .trimEnd()
    .split("\r\n")
    .map((line) => line.split(","));
  return rows.map((row) => Object.fromEntries(head!.map((name, index) => [name, row[index] ?? ""])));
};

const days = (...dates: readonly string[]) =>
  dates.map((date, day) => ({
    date,
    sunHours: 11 + day,
    noonMs: Date.parse(`${date}T11:30Z`),
    noonAltitudeDeg: 40,
    first: 0,
    end: 0,
  }));
const of = (...values: readonly number[]) => Float64Array.from(values);

const flat = { name: "flat", legMm: null, tiltDeg: 2, bearingDeg: 181 };
const low = { name: "low", legMm: 254, tiltDeg: 31, bearingDeg: 182 };
const high = { name: "high", legMm: 508, tiltDeg: 57, bearingDeg: 183 };

test("season: each day's own figures under each setting", () => {
  const yields = handMade<SeasonYield>({
    days: days("2027-06-01", "2027-06-02"),
    settings: [
      {
        setting: flat,
        clearWh: of(301, 302),
        expectedWh: of(201, 202),
        band: { p10Wh: of(101, 102), p50Wh: of(151, 152), p90Wh: of(251, 252) },
      },
      {
        setting: low,
        clearWh: of(401, 402),
        expectedWh: of(211, 200),
        band: { p10Wh: of(111, 112), p50Wh: of(161, 162), p90Wh: of(261, 262) },
      },
    ],
    best: Uint8Array.of(1, 0),
    weights: [],
  });
  const row = (
    ...[date, setting, tilt, bearing, sun, clear, expected, best, p10, p50, p90]: readonly string[]
  ) => ({
    date,
    setting,
    tilt_deg: tilt,
    bearing_deg: bearing,
    sun_hours: sun,
    clear_Wh: clear,
    expected_Wh: expected,
    best,
    p10_Wh: p10,
    p50_Wh: p50,
    p90_Wh: p90,
  });
  expect(records(seasonTable(yields))).toEqual([
    row("2027-06-01", "flat", "2", "181", "11", "301", "201", "false", "101", "151", "251"),
    row("2027-06-01", "low", "31", "182", "11", "401", "211", "true", "111", "161", "261"),
    row("2027-06-02", "flat", "2", "181", "12", "302", "202", "true", "102", "152", "252"),
    row("2027-06-02", "low", "31", "182", "12", "402", "200", "false", "112", "162", "262"),
  ]);
});

test("swaps: from and to, what it is worth, and how early and late", () => {
  const answer = handMade<SwapsAnswer>({
    days: days("2027-06-01", "2027-06-02", "2027-06-03", "2027-06-04", "2027-06-05", "2027-06-06"),
    settings: [flat, low, high],
    calendar: {
      stays: [
        { setting: 2, first: 0, end: 3 },
        { setting: 1, first: 3, end: 6 },
      ],
      swaps: [{ from: 2, to: 1, worthWh: 77, earlyDays: 2, lateDays: 1 }],
    },
  });
  expect(records(swapsTable(answer))).toEqual([
    {
      date: "2027-06-01",
      setting: "high",
      bearing_deg: "183",
      instead_of: "",
      leg_mm: "508",
      tilt_deg: "57",
      from_post_deg: "33",
      worth_Wh: "",
      earliest: "2027-06-01",
      latest: "2027-06-01",
    },
    {
      date: "2027-06-04",
      setting: "low",
      bearing_deg: "182",
      instead_of: "high",
      leg_mm: "254",
      tilt_deg: "31",
      from_post_deg: "59",
      worth_Wh: "77",
      earliest: "2027-06-02",
      latest: "2027-06-05",
    },
  ]);
});

test("battery: what is offered, used, short and curtailed; the lowest charge and its band; the chance", () => {
  const season = handMade<BatterySeason>({
    days: days("2027-06-01"),
    lowest: { p10: of(0.21), p50: of(0.43), p90: of(0.87) },
    meanLowest: of(0.52),
    meanOfferedWh: of(310),
    meanUsedWh: of(220),
    meanShortWh: of(15),
    meanCurtailedWh: of(64),
    shortShare: of(0.09),
    blockedShare: of(0.17),
  });
  expect(records(batteryTable(season))[0]).toMatchObject({
    date: "2027-06-01",
    offered_Wh: "310",
    used_Wh: "220",
    short_Wh: "15",
    curtailed_Wh: "64",
    lowest_charge_pct: "52",
    short_chance_pct: "9",
    too_cold_chance_pct: "17",
    p10_charge_pct: "21",
    p50_charge_pct: "43",
    p90_charge_pct: "87",
  });
});

describe("worth", () => {
  const living = (n: number) => ({
    shortDays: n + 0.1,
    shortDaysP90: n + 2,
    shortWh: 10 * n,
    usedWhADay: 20 * n,
    offeredWhADay: 30 * n,
    fullByNoonShare: 0.1,
    blockedDays: n + 5,
    coping: { by: "driving", topUps: n + 0.3, price: 4 * n },
  });
  const answer = handMade<WorthAnswer>({
    asIs: { ...living(40), season: { outcomes: [{ wantedWh: 1 }] } },
    rows: [
      {
        ...living(7),
        name: "thicker cable",
        says: "16 mm2",
        price: 61,
        shortDaysAvoided: 33,
        paperWhADay: 29,
        usefulWhADay: 28.4,
        pricePerShortDay: 1.85,
        pricePerUsefulKWh: 3.14,
        paysAfter: 2.6,
        needs: [],
        unsafe: [],
        enough: true,
      },
    ],
    days: 200,
  });
  const worth = handMade<Worth>({ currency: "EUR", wantedShortDays: 8, years: 10 });

  test("today's row and a remedy's, every figure under its own header", () => {
    const [today, cable] = records(worthTable(answer, worth));
    expect(today).toMatchObject({
      set_up: "as is",
      changes: "today",
      short_days: "40.1",
      short_days_p90: "42",
      short_Wh: "400",
      used_Wh_a_day: "800",
      paper_Wh_a_day: "",
      price: "",
      blocked_days: "45",
      top_ups: "40.3",
      top_up_price: "160",
      seasons_to_pay: "",
      verdict: "",
    });
    expect(cable).toMatchObject({
      set_up: "thicker cable",
      changes: "16 mm2",
      short_days: "7.1",
      short_days_p90: "9",
      short_Wh: "70",
      used_Wh_a_day: "140",
      paper_Wh_a_day: "29",
      useful_Wh_a_day: "28.4",
      price: "61",
      price_short_day: "1.85",
      price_useful_kWh: "3.14",
      blocked_days: "12",
      top_ups: "7.3",
      top_up_price: "28",
      seasons_to_pay: "2.6",
    });
  });
});

test("wiring: milliohms, volts, per cent, watt-hours of each size", () => {
  const choice = (size: string, today: boolean, n: number) => ({
    size,
    today,
    ohm: 0.0123 * n,
    dropV: 0.31 * n,
    dropPct: 2.2 * n,
    withinCustom: n < 2,
    lossW: 1.7 * n,
    lostWhADay: 4.1 * n,
    lostWhASeason: 520 * n,
    returnsWhASeason: 90 * (2 - n),
  });
  const answer = handMade<WiringAnswer>({
    runs: [
      { run: "panel cable", ratedA: 5.6, choices: [choice("4 mm2", true, 2), choice("6 mm2", false, 1)] },
    ],
  });
  expect(records(wiringTable(answer))).toEqual([
    {
      run: "panel cable",
      size: "4 mm2",
      today: "true",
      resistance_mohm: "24.6",
      rated_A: "5.6",
      drop_V: "0.62",
      drop_pct: "4.4",
      within_custom: "false",
      lost_Wh_a_day: "8.2",
      lost_Wh_a_season: "1040",
      returns_Wh_a_season: "0",
    },
    {
      run: "panel cable",
      size: "6 mm2",
      today: "false",
      resistance_mohm: "12.3",
      rated_A: "5.6",
      drop_V: "0.31",
      drop_pct: "2.2",
      within_custom: "true",
      lost_Wh_a_day: "4.1",
      lost_Wh_a_season: "520",
      returns_Wh_a_season: "90",
    },
  ]);
});

test("good enough: the ends of the 1 % and of the 3 % range", () => {
  const band = handMade<TiltBand>({
    period: { name: "season", first: 0, end: 1 },
    bestTiltDeg: 38,
    dayWh: 411,
    within1Pct: [33, 44],
    within3Pct: [27, 51],
  });
  expect(records(bandsTable([band]))).toEqual([
    {
      period: "season",
      best_tilt_deg: "38",
      best_Wh_a_day: "411",
      within_1pct_from_deg: "33",
      within_1pct_to_deg: "44",
      within_3pct_from_deg: "27",
      within_3pct_to_deg: "51",
    },
  ]);
});

test("tolerance: millimetres, degrees of tilt, and each error of bearing", () => {
  const facts = handMade<SettingFacts>({
    setting: low,
    tolerance: [
      {
        period: { name: "2027-06", first: 0, end: 1 },
        dayWh: 390,
        perMmWh: 0.12,
        perDegWh: 1.34,
        bearingWh: [0.6, 2.4, 9.8, 21.5],
      },
    ],
  });
  expect(records(toleranceTable([facts]))).toEqual([
    {
      setting: "low",
      period: "2027-06",
      mean_Wh_a_day: "390",
      per_mm_Wh_a_day: "0.12",
      per_degree_Wh_a_day: "1.34",
      bearing_5_deg_Wh_a_day: "0.6",
      bearing_10_deg_Wh_a_day: "2.4",
      bearing_20_deg_Wh_a_day: "9.8",
      bearing_30_deg_Wh_a_day: "21.5",
    },
  ]);
});

test("rules of thumb: the tilts from the ground and, the other way round, from a post", () => {
  const rule = handMade<RuleOfThumb>({
    rule: "latitude",
    tiltDeg: [37, 67],
    changes: true,
    totalWh: 51_200,
    lossWh: 1300,
    lossShare: 0.025,
  });
  expect(records(rulesTable([rule]))).toEqual([
    {
      rule: "latitude",
      tilt_from_deg: "37",
      tilt_to_deg: "67",
      post_from_deg: "23",
      post_to_deg: "53",
      season_Wh: "51200",
      loss_Wh: "1300",
      loss_pct: "2.5",
    },
  ]);
});

test("sets of legs: what the set brings, what its last leg adds, its short days", () => {
  const answer = handMade<LegsAnswer>({
    sets: [{ legs: [low, high], totalWh: 61_700, addsWh: 12.3, shortDays: 6.4 }],
  });
  const both = { legs: "2", season_Wh: "61700", adds_Wh_a_day: "12.3", short_days: "6.4" };
  expect(records(legSetsTable(answer))).toEqual([
    { ...both, leg_mm: "254", leg_in: "10 in", tilt_deg: "31", from_post_deg: "59" },
    { ...both, leg_mm: "508", leg_in: "20 in", tilt_deg: "57", from_post_deg: "33" },
  ]);
});

test("tilt map: the best tilt of a date, and every fifteenth degree", () => {
  const tiltsDeg = [0, 15, 30, 45, 60, 75, 90];
  const ladder = handMade<TiltLadder>({
    tiltsDeg,
    days: days("2027-06-01"),
    dayWh: tiltsDeg.map((tilt) => of(500 - Math.abs(tilt - 30) * 4)),
    cloudIn: false,
  });
  expect(records(tiltMapTable(() => ladder))[0]).toMatchObject({
    date: "2027-06-01",
    tilt_deg: "30",
    from_post_deg: "60",
    best_Wh: "500",
    tilt_0_Wh: "380",
    tilt_15_Wh: "440",
    tilt_45_Wh: "440",
    tilt_60_Wh: "380",
    tilt_75_Wh: "320",
    tilt_90_Wh: "260",
  });
});

test("aims: what each routine brings, and what it adds to the one before it", () => {
  const part = (setting: object, fromMinutes: number, toMinutes: number) => ({
    setting,
    fromMinutes,
    toMinutes,
  });
  const answer = handMade<Reaim>({
    cloudIn: true,
    periods: [
      {
        period: { name: "season", first: 0, end: 1 },
        noon: { parts: [part(low, -720, 720)], dayWh: 300, clearDayWh: 410 },
        routines: [
          { parts: [part(high, -720, 720)], dayWh: 311, clearDayWh: 425 },
          {
            parts: [part({ ...low, bearingDeg: 131 }, -720, 0), part({ ...high, bearingDeg: 229 }, 0, 720)],
            dayWh: 345,
            clearDayWh: 480,
          },
        ],
        limitDayWh: 390,
      },
    ],
  });
  const place = cardPlace(
    handMade({ latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Amsterdam" }),
    handMade(days("2027-06-01")),
  );
  const told = records(aimsTable(answer, place)).map((row) => [
    row.routine,
    row.aim,
    row.from_clock,
    row.setting,
    row.tilt_deg,
    row.bearing_deg,
    row.expected_Wh_a_day,
    row.clear_Wh_a_day,
    row.gain_Wh_a_day,
  ]);
  expect(told).toEqual([
    ["facing noon", "1", "", "low", "31", "182", "300", "410", ""],
    ["1 aim", "1", "", "high", "57", "183", "311", "425", "11"],
    ["2 aims", "1", "", "low", "31", "131", "345", "480", "34"],
    // Solar noon was stated as 11:30 UTC: half past one in summer time.
    ["2 aims", "2", "13:30", "high", "57", "229", "345", "480", "34"],
    ["facing the sun", "1", "", "", "", "", "390", "", "45"],
  ]);
});

test("one day: power and light of each setting at its step", () => {
  const curves = handMade<DayCurves>({
    day: days("2027-06-01")[0],
    timeMs: of(Date.parse("2027-06-01T10:15Z")),
    curves: [
      { setting: flat, watts: of(41), planeWm2: of(512) },
      { setting: low, watts: of(63), planeWm2: of(771) },
    ],
  });
  expect(records(dayTable(curves, "Europe/Amsterdam"))).toEqual([
    { date: "2027-06-01", clock: "12:15", setting: "flat", power_W: "41", plane_W_m2: "512" },
    { date: "2027-06-01", clock: "12:15", setting: "low", power_W: "63", plane_W_m2: "771" },
  ]);
});

test("a circuit's curve: where each controller works", () => {
  const shown = handMade<CurveToShow>({
    label: "25 C",
    curve: {
      openV: 24,
      mppt: { volts: 18.1, amps: 5.5, watts: 99.6 },
      pwm: { volts: 13.2, amps: 5.8, watts: 74.9 },
      ampsAt: (volts: number) => 6 - volts / 4,
    },
  });
  const [mppt, pwm, ...curve] = records(curveTable([shown]));
  expect(mppt).toEqual({
    curve: "25 C",
    point: "MPPT",
    voltage_V: "18.1",
    current_A: "5.5",
    power_W: "99.6",
  });
  expect(pwm).toEqual({ curve: "25 C", point: "PWM", voltage_V: "13.2", current_A: "5.8", power_W: "74.9" });
  // Twelve of 24 V: 6 - 3 A, 36 W.
  expect(curve[12]).toMatchObject({ voltage_V: "12", current_A: "3", power_W: "36" });
});

test("what power tracking gains, by cell temperature", () => {
  const gain: ControllerGain = { cellC: -5, mpptW: 104.3, pwmW: 81.2, gainPct: 28.4 };
  expect(records(controllerGainTable([gain]))).toEqual([
    { cell_degC: "-5", mppt_W: "104.3", pwm_W: "81.2", gain_pct: "28.4" },
  ]);
});
