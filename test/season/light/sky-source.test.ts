import { describe, expect, test } from "vitest";
import type { PlanInput } from "../../../lib/plan/index.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { drawSeasons } from "../../../lib/season/light/sequences.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { type PlanSkies, skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { seasonsOf, skySource } from "../../../lib/season/light/sky-source.ts";
import { skyAtRatio } from "../../../lib/sky/climate/days/cloud-skies.ts";
import { quickPlan } from "../battery/battery-plan.ts";
import { clearSkies } from "../random-plan.ts";

const climate: PlanInput["sky"] = {
  source: "climate",
  from: { kind: "months", clearness: new Array<number>(12).fill(0.45) },
  seasons: 10,
  seed: 3,
};

describe("skySource", () => {
  test("the clear sky alone, where nothing else is known", () => {
    const skies = clearSkies(quickPlan());
    const source = skySource(quickPlan(), { skies, notes: [], cloud: null });
    expect(source).toMatchObject({ kind: "years", cloudIn: false });
    expect(source.kind === "years" && source.skies[0]).toBe(skies.clear);
    expect(seasonsOf(source)).toBe(1);
  });

  test("the years of a weather file, each a season", () => {
    const { sun, clear } = clearSkies(quickPlan());
    const years = readySkies(sun, clear.sky, [
      { weight: 0.5, sky: clear.sky },
      { weight: 0.5, sky: clear.sky },
    ]);
    const source = skySource(quickPlan(), { skies: years, notes: [], cloud: null });
    expect(source).toMatchObject({ kind: "years", cloudIn: true });
    expect(source.kind === "years" && source.skies).toBe(years.expected);
    expect(seasonsOf(source)).toBe(2);
  });

  test("seasons drawn from a climate, between rungs of a twentieth that hold all of their days", () => {
    const plan = quickPlan({ sky: climate });
    const skies = skiesOfPlan(plan, null);
    const heard: number[] = [];
    const source = skySource(plan, skies, (done) => heard.push(done));
    if (source.kind !== "drawn" || skies.cloud === null) throw new Error("expected drawn seasons");
    expect(seasonsOf(source)).toBe(10);
    expect(heard.length).toBeGreaterThan(0);
    const { days } = skies.skies.sun;
    expect(source.sequences).toEqual(drawSeasons({ days }, skies.cloud));
    const [least, most] = [Math.min(...source.sequences.ratio), Math.max(...source.sequences.ratio)];
    const ratios = source.rungs.map(({ ratio }) => ratio);
    expect(ratios[0]).toBeLessThanOrEqual(least);
    expect(ratios[0]).toBeGreaterThan(least - 0.05);
    const top = ratios.at(-1) ?? Number.NaN;
    expect(top).toBeGreaterThanOrEqual(most);
    expect(top).toBeLessThan(most + 0.05);
    ratios.slice(1).forEach((ratio, at) => {
      expect(ratio - ratios[at]).toBeCloseTo(0.05, 12);
    });
    // Every rung is the sky in which each day lets through that share of the clear day.
    for (const { ratio, sky } of source.rungs) {
      const own = skyAtRatio(skies.skies.sun, skies.skies.clear.sky, skies.cloud.days, ratio);
      expect([...sky.sky.global]).toEqual([...own.global]);
    }
  });

  test("goes to the plane by the plan's own model, behind its own skyline", () => {
    const ridge = [0, 90, 180, 270].map((bearingDeg) => ({ bearingDeg, altitudeDeg: 60 }));
    const brightest = (changes: Partial<PlanInput>): number => {
      const plan = quickPlan({ sky: climate, ...changes });
      const source = skySource(plan, skiesOfPlan(plan, null));
      if (source.kind !== "drawn") throw new Error("expected drawn seasons");
      return Math.max(...(source.rungs.at(-1)?.sky.dome.beam ?? []));
    };
    expect(brightest({})).toBeGreaterThan(100);
    // No sun of April at 50 N stands above 60 degrees.
    expect(
      brightest({
        site: { latitudeDeg: 50, longitudeDeg: 8, timeZone: "Etc/GMT-1", horizon: ridge },
      }),
    ).toBe(0);
    const circumsolar = (toPlane: "perez" | "isotropic"): number => {
      const plan = quickPlan({ sky: { ...climate, toPlane } });
      const source = skySource(plan, skiesOfPlan(plan, null));
      if (source.kind !== "drawn") throw new Error("expected drawn seasons");
      return Math.max(...(source.rungs.at(-1)?.sky.dome.circumsolar ?? []));
    };
    expect(circumsolar("isotropic")).toBe(0);
    expect(circumsolar("perez")).toBeGreaterThan(0);
  });

  test("a season without sun has one rung, the clear sky of nothing", () => {
    const plan = quickPlan({
      sky: climate,
      site: { latitudeDeg: 85, longitudeDeg: 8, timeZone: "Etc/GMT-1" },
      season: { from: "2027-12-20", to: "2027-12-22", stepMinutes: 60 },
    });
    const source = skySource(plan, skiesOfPlan(plan, null));
    if (source.kind !== "drawn") throw new Error("expected drawn seasons");
    expect(source.rungs.map(({ ratio }) => ratio)).toEqual([1]);
  });
});

describe("skiesOfPlan without cloud", () => {
  test("has the clear sky and nothing to say", () => {
    const found: PlanSkies = skiesOfPlan(quickPlan(), null);
    expect(found).toMatchObject({ notes: [], cloud: null });
    expect(found.skies.expected).toEqual([]);
    expect(found.skies.clear.weight).toBe(1);
    expect(Math.max(...found.skies.clear.sky.beamNormal)).toBeGreaterThan(600);
  });

  test("the clear sky stands at the site's height, over its ground, in its air", () => {
    const clearOf = (changes: Partial<PlanInput>) => skiesOfPlan(quickPlan(changes), null).skies.clear.sky;
    const site = { latitudeDeg: 50, longitudeDeg: 8, timeZone: "Etc/GMT-1" };
    const low = clearOf({ site });
    expect(Math.max(...clearOf({ site: { ...site, elevationM: 3000 } }).beamNormal)).toBeGreaterThan(
      1.05 * Math.max(...low.beamNormal),
    );
    const warm = clearOf({ air: { temperatureC: 31, windMs: 4 } });
    expect(new Set(warm.airC)).toEqual(new Set([31]));
    expect(new Set(warm.windMs)).toEqual(new Set([4]));
  });
});

describe("panelUnits", () => {
  test("a panel's name, count, losses and mount go with it", () => {
    const [propped, roof, rack] = panelUnits(
      quickPlan({
        panels: [
          { name: "propped", howMany: 3, module: { powerW: 100 }, dustPct: 10, otherLossPct: 5 },
          {
            name: "roof",
            module: { powerW: 100 },
            mount: { kind: "fixed", back: "roof", tiltDeg: 7, bearingDeg: 90 },
          },
          {
            name: "rack",
            module: { powerW: 100 },
            mount: { kind: "fixed", back: "open", tiltDeg: 7, bearingDeg: 90 },
          },
        ],
      }).panels,
    );
    expect(propped).toMatchObject({ name: "propped", howMany: 3, fixedAim: null });
    expect(propped.model.shareLeft).toBeCloseTo(0.9 * 0.95, 9);
    expect(roof.fixedAim).toEqual({ tiltDeg: 7, bearingDeg: 90 });
    expect(roof.model.heatLoss.u0).toBeLessThan(rack.model.heatLoss.u0);
    expect(rack.model.heatLoss).toEqual(propped.model.heatLoss);
  });

  test("a nameplate that can't be true is told where it stands", () => {
    const untrue = { powerW: 100, vmpV: 18, impA: 5.56, vocV: 18.01, iscA: 5.57 };
    const plan = quickPlan();
    const panels = [plan.panels[0], { ...plan.panels[0], module: { ...plan.panels[0].module, ...untrue } }];
    expect(() => panelUnits(panels)).toThrow("panels[1].module");
  });
});
