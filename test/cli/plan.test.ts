import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { listen, ownFolder } from "./listen.ts";

const given = {
  site: { latitudeDeg: -41, longitudeDeg: 174 },
  season: { from: "2027-12-01", to: "2028-02-01" },
  panels: [
    { name: "hatch", module: { powerW: 100 }, mount: { kind: "fixed", tiltDeg: 10 } },
    {
      name: "prop",
      module: {
        powerW: 60,
        vmpV: 17.1,
        impA: 3.5,
        vocV: 21.1,
        iscA: 3.8,
        powerPctPerK: -0.45,
        vocPctPerK: -0.38,
        iscPctPerK: 0.06,
      },
    },
  ],
  stand: { pivotMm: "22 in", legs: [{ name: "long", tiltDeg: 55, readFrom: "post" }] },
};

describe("plan", () => {
  test("shows every default, as a plan that reads the same again", async () => {
    const folder = await ownFolder();
    const [file, out] = [join(folder, "plan.json"), join(folder, "whole.json")];
    await writeFile(file, JSON.stringify(given));
    const { code, said, remarked } = await listen("plan", file);
    expect(code).toBe(0);
    const whole = JSON.parse(said);
    expect(whole.panels[0].mount).toEqual({ kind: "fixed", tiltDeg: 10, back: "roof", bearingDeg: 0 });
    expect(whole.stand.pivotMm).toBeCloseTo(558.8, 9);
    expect(readPlan(whole)).toEqual(readPlan(given));
    // 100 W over 18 V is 5.56 A; 1.22 x 18 V; 1.065 x 5.56 A. The other panel's plate leaves nothing out.
    expect(remarked).toBe(
      "hatch: not stated, and taken as usual: Vmp 18.0 V, Imp 5.56 A, Voc 22.0 V, Isc 5.92 A, coefficient of Voc -0.30 %/K, coefficient of Isc 0.05 %/K and coefficient of power -0.40 %/K. Better read them off the plate.\n",
    );
    expect((await listen("plan", file, "--out", out)).said.trim()).toBe("");
    expect(JSON.parse(await readFile(out, "utf8"))).toEqual(whole);
    expect(JSON.parse((await listen("plan", file, "--json", "--to", "2027-12-09")).said).season.to).toBe(
      "2027-12-09",
    );
  });
});
