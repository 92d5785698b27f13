import { parseHTML } from "linkedom";
import { describe, expect, test } from "vitest";
import { batteryModel, operatingCurve } from "../../lib/circuit/index.ts";
import { type PlanInput, readPlan } from "../../lib/plan/index.ts";
import {
  batterySummary,
  batteryTable,
  chargeChart,
  circuitCautions,
  circuitModelWords,
  controllerGainChart,
  controllerGains,
  controllerGainTable,
  csvText,
  curveChart,
  curveTable,
  dropChart,
  loadsTable,
  ruleWords,
  secondPanelCautions,
  uncertaintyWords,
  wiringHeadline,
  wiringSummary,
  wiringTable,
  worthChart,
  worthHeadline,
  worthTable,
} from "../../lib/report/index.ts";
import { batteryOfPlan, branchesOf, choicesOf, skiesOfPlan, worthOfPlan } from "../../lib/season/index.ts";

const input: PlanInput = {
  site: { latitudeDeg: 55, longitudeDeg: 9, timeZone: "Europe/Copenhagen" },
  season: { from: "2027-03-01", to: "2027-03-21", stepMinutes: 60 },
  sky: {
    source: "climate",
    from: { kind: "months", globalKWhM2: [0.5, 1.1, 2.3, 4, 5.2, 5.4, 5.2, 4.3, 2.8, 1.4, 0.7, 0.4] },
    seasons: 10,
  },
  panels: [{ name: "propped", module: { powerW: 80 } }],
  stand: { legs: [{ name: "leg", lengthMm: 600 }] },
  circuit: { controller: { kind: "pwm" } },
  battery: { chemistry: "flooded", capacityAh: 70 },
  loads: {
    appliances: [
      { name: "=lamp", watts: 15, use: { kind: "at-times", times: [{ from: "18:00", to: "23:00" }] } },
      { name: "fridge", watts: 40, use: { kind: "cooling" } },
      { name: "drill", watts: 300, supply: "inverter", use: { kind: "for-hours", hours: 0.2 } },
    ],
  },
};

const plan = readPlan(input);
const skies = skiesOfPlan(plan, null);
const battery = batteryOfPlan(plan, skies);
const worth = worthOfPlan(plan, skies);
const { document } = parseHTML("<!doctype html><html><body></body></html>");
const branches = branchesOf(choicesOf(plan, skies.skies).asIs);
const curveAt = (cellC: number) =>
  operatingCurve(branches, plan.circuit, batteryModel(plan.battery), { absorbedWm2: 1000, cellC });
const gains = controllerGains(curveAt);
const curves = [20, 65].map((cellC) => ({ label: `${cellC} degC`, curve: curveAt(cellC) }));

describe("charts of circuit, battery and worth", () => {
  const charts = (width: number): Readonly<Record<string, SVGSVGElement>> => ({
    charge: chargeChart(battery.season, { document, width }),
    curve: curveChart(curves, { document, width }),
    gain: controllerGainChart(gains, { document, width }),
    drop: dropChart(battery.wiring.runs[0], { document, width }),
    worth: worthChart(worth.answer, plan.worth, { document, width }),
  });

  test.each([360, 960])("at %i px: named, described, and no figure that is none", (width) => {
    for (const [name, chart] of Object.entries(charts(width))) {
      expect(chart.getAttribute("aria-label"), name).not.toBe("");
      expect(chart.getAttribute("aria-description"), name).not.toBe("");
      expect(chart.outerHTML, name).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe("tables of circuit, battery and worth", () => {
  test("each writes as CSV, a row for each thing, and text that looks like a formula is made harmless", () => {
    const lines = (text: string) => text.trimEnd().split("\r\n");
    expect(lines(csvText(batteryTable(battery.season)))).toHaveLength(22);
    expect(lines(csvText(wiringTable(battery.wiring)))).toHaveLength(9);
    expect(lines(csvText(worthTable(worth.answer, plan.worth)))).toHaveLength(1 + 8);
    expect(lines(csvText(curveTable(curves)))).toHaveLength(1 + 2 * (2 + 25));
    expect(lines(csvText(controllerGainTable(gains)))).toHaveLength(20);
    const loads = lines(csvText(loadsTable(plan.loads)));
    expect(loads[1]).toBe('"\'=lamp",15,18:00 to 23:00,75');
    expect(loads[2]).toBe("fridge,40,35 % of the time at 25 °C,336");
    // 0.2 h x (300 / 0.88 + 6) = 69.4 Wh.
    expect(loads[3]).toBe("drill,300,0.2 h a day,69");
  });
});

describe("words of circuit and battery", () => {
  test("headlines name the figures that matter", () => {
    const figures = (headline: ReturnType<typeof wiringHeadline>) =>
      headline.flatMap((part) => (typeof part === "string" ? [] : [part.figure]));
    expect(figures(wiringHeadline(battery.wiring))).toEqual([
      expect.stringMatching(/^\d\.\d %$/),
      expect.stringMatching(/^\d+\.\d Wh a day$/),
      expect.stringMatching(/^\d+(\.5)? A fuse$/),
      expect.stringMatching(/ in 21 days$/),
    ]);
    expect(figures(worthHeadline(worth.answer, plan.worth))[0]).toMatch(/short days?$/);
    const idle = readPlan({ ...input, loads: {} });
    expect(worthHeadline(worthOfPlan(idle, skies).answer, idle.worth)).toEqual([
      "The plan states no loads: say what draws on the battery, and this page answers.",
    ]);
    const content = { ...plan.worth, wantedShortDays: 300 };
    expect(worthHeadline(worth.answer, content).at(-1)).toBe(
      ", which is within the short days you accept: buy nothing.",
    );
  });

  test("every run is told with its drop, its cost and its check", () => {
    const words = wiringSummary(battery.wiring);
    expect(words[0]).toMatch(/^The panel cable, 4 mm²: drops /);
    expect(words[1]).toContain("confirm it by the local code");
    expect(words[2]).toMatch(/^The battery cable, 6 mm²: drops /);
  });

  test("a great drop before a PWM controller is told to cost little, and why", () => {
    const dropping = (withinCustom: boolean, controller: "pwm" | "mppt") => ({
      ...battery.wiring,
      controller,
      runs: battery.wiring.runs.map((run) => ({
        ...run,
        choices: run.choices.map((choice) => ({ ...choice, withinCustom })),
      })),
    });
    const spare = "A PWM controller leaves the panel's spare volts unused";
    const panelAndBattery = (wiring: typeof battery.wiring) => {
      const words = wiringSummary(wiring);
      return [words[0].includes(spare), words[2].includes(spare)];
    };
    expect(panelAndBattery(dropping(false, "pwm"))).toEqual([true, false]);
    expect(panelAndBattery(dropping(true, "pwm"))).toEqual([false, false]);
    expect(panelAndBattery(dropping(false, "mppt"))).toEqual([false, false]);
  });

  test("the season is told with its bands and its first short day", () => {
    const words = batterySummary(battery.season).join(" ");
    expect(words).toMatch(/more than \d+ in one season of ten/);
    expect(words).toMatch(/\d+ of 10 seasons have a short day; the first comes about \d+ March 2027\./);
    expect(words).toMatch(/The charge falls to its floor, \d+ %/);
    const roomy = {
      ...battery.season,
      setUp: { ...battery.season.setUp, battery: { ...plan.battery, usablePct: 95 } },
    };
    expect(batterySummary(roomy).join(" ")).toMatch(
      /at its lowest on average, \d+ % or less in one season of ten/,
    );
  });

  test("the handbook's rule, and how far the skies can be trusted", () => {
    expect(ruleWords(battery.rule).join("")).toMatch(
      /^Rule of thumb \(Masters 2004, for 95 % of the time\): .* peak sun hours a day asks for \d\.\d days of storage/,
    );
    expect(ruleWords(null)).toEqual([]);
    expect(uncertaintyWords("many seasons")).toEqual([]);
    expect(uncertaintyWords("clear sky only")[0]).toContain("upper bounds");
    expect(uncertaintyWords("few years")[0]).toContain("how bad a bad season is");
  });

  test("cautions: local code first, then what each chemistry asks; a roof's before all", () => {
    const words = circuitCautions(plan);
    expect(words[0]).toMatch(/^Local electrical code and licensed practice come before/);
    expect(words.at(-1)).toContain("acid");
    expect(secondPanelCautions(plan)[0]).toContain("ladder");
    for (const what of [
      "battery to the controller first",
      "Cover the panel",
      "polarity",
      "fuse close",
      "mated daily",
    ]) {
      expect(words.join(" ")).toContain(what);
    }
  });

  test("the models are named with their sources", () => {
    expect(circuitModelWords(plan).join(" ")).toContain("PWM");
    expect(circuitModelWords(readPlan({ ...input, circuit: {} })).join(" ")).toContain("MPPT");
  });
});
