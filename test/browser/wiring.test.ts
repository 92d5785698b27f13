import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { batteryModel, type OperatingCurve, operatingCurve } from "../../lib/circuit/index.ts";
import type { Plan } from "../../lib/plan/index.ts";
import {
  controllerHeadline,
  csvText,
  wiringHeadline,
  wiringSummary,
  wiringTable,
} from "../../lib/report/index.ts";
import { batteryOfPlan, branchesOf, heldAim, panelUnits, type WiringAnswer } from "../../lib/season/index.ts";
import { DEMO, livedPlan, skiesFor } from "./demo.ts";
import { expectFigures, field, figuresOf, notebookUnderTest } from "./notebook-under-test.ts";

const { opened } = notebookUnderTest("wiring.html");

const CIRCUIT = DEMO.circuit as { readonly panelCable: object };

const withCable = (panelCable: object): Plan =>
  livedPlan({ circuit: { ...CIRCUIT, panelCable: { ...CIRCUIT.panelCable, ...panelCable } } });

const wiringOf = (plan: Plan): WiringAnswer => batteryOfPlan(plan, skiesFor(plan)).wiring;

/** The rows of the page's table of cables, by the names of its CSV. */
const savedTable = async (page: Page): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.locator("div.data-table").getByRole("button", { name: "Save CSV" }).click(),
  ]);
  return readFileSync(await download.path(), "utf8");
};

/** All panels of a plan with their cables in full sun, cells at a warmth. */
const curveOf = (plan: Plan, cellC: number): OperatingCurve => {
  const southwards = heldAim({ tiltDeg: 0, bearingDeg: 180 });
  const branches = branchesOf({
    ...plan,
    panels: panelUnits(plan.panels).map((unit) => ({ unit, aims: southwards })),
  });
  return operatingCurve(branches, plan.circuit, batteryModel(plan.battery), { absorbedWm2: 1000, cellC });
};

/** Waits until headline, sentences and table are those of a plan, to the last digit. */
const expectWiring = async (page: Page, plan: Plan): Promise<void> => {
  const wiring = wiringOf(plan);
  const curve = { label: "cells at 45 °C", curve: curveOf(plan, 45) };
  await expectFigures(page, figuresOf([...wiringHeadline(wiring), ...controllerHeadline(curve)]));
  const sentences = wiringSummary(wiring);
  await expect
    .poll(() => page.locator("main .wiring-says li").allTextContents(), { timeout: 20_000 })
    .toEqual(sentences);
  expect(await savedTable(page)).toBe(csvText(wiringTable(wiring)));
};

test("area and length of the cable change drop, loss and fuse as the library has them", async () => {
  const { page, complaints, close } = await opened();
  await expectWiring(page, livedPlan());

  await field(page, "circuit.panelCable.size").locator("select").selectOption({ label: "6 mm²" });
  await expectWiring(page, withCable({ size: 6 }));

  const length = field(page, "circuit.panelCable.lengthM");
  await length.locator("input[type=text]").fill("14.5");
  await expectWiring(page, withCable({ size: 6, lengthM: 14.5 }));

  // A gauge is another series with other resistances.
  await field(page, "circuit.panelCable.size").locator("select").selectOption({ label: "10 AWG" });
  await expectWiring(page, withCable({ size: "10 AWG", lengthM: 14.5 }));
  expect(complaints).toEqual([]);
  await close();
}, 300_000);

test("the controller's kind changes what a cable costs, and its current is judged", async () => {
  const { page, complaints, close } = await opened();
  await page.getByLabel("Controller", { exact: true }).selectOption({ index: 0 });
  await expectWiring(
    page,
    livedPlan({ circuit: { ...CIRCUIT, controller: { kind: "mppt", maxCurrentA: 10 } } }),
  );
  await field(page, "circuit.controller.maxCurrentA").locator("input[type=text]").fill("2");
  await expectWiring(
    page,
    livedPlan({ circuit: { ...CIRCUIT, controller: { kind: "mppt", maxCurrentA: 2 } } }),
  );
  expect(complaints).toEqual([]);
  await close();
}, 300_000);

test("a warmer panel moves the operating points to where the library has them", async () => {
  const { page, complaints, close } = await opened();
  const plan = livedPlan();
  const pointsAt = (cellC: number): string => {
    const { mppt, pwm } = curveOf(plan, cellC);
    const words = [mppt, pwm].map(
      ({ volts, amps, watts }, index) =>
        `cells at ${cellC} °C, ${index === 0 ? "MPPT" : "PWM"}: ${volts.toFixed(1)} V, ${amps.toFixed(2)} A, ${watts.toFixed(0)} W`,
    );
    return `Operating points: ${words.join("; ")}.`;
  };
  const points = () =>
    page.locator('svg[aria-label^="Current against voltage"]').getAttribute("aria-description");
  await expect.poll(points, { timeout: 10_000 }).toBe(pointsAt(45));
  await page.getByLabel("Cells at").selectOption({ label: "75 °C" });
  await expect.poll(points, { timeout: 10_000 }).toBe(pointsAt(75));
  expect(complaints).toEqual([]);
  await close();
}, 120_000);
