import { expect, test } from "vitest";
import { monthExpectations } from "../../../lib/season/sheet/month-expectations.ts";

const days = ["2027-05-30", "2027-05-31", "2027-06-01", "2027-06-02", "2027-06-03"].map((date) => ({ date }));
const panelsWh = Float64Array.of(210, 190, 330, 360, 390);
const dark = { weight: 0.25, dayWh: Float64Array.of(40, 60, 100, 120, 140) };
const bright = { weight: 0.75, dayWh: Float64Array.of(160, 200, 300, 280, 320) };

test("a month's two means and its spread, worked by hand", () => {
  const [may, june] = monthExpectations(days, panelsWh, [dark, bright], true);
  // May: panels (210 + 190) / 2; battery (0.25 x 40 + 0.75 x 160 + 0.25 x 60 + 0.75 x 200) / 2 = (130 + 165) / 2.
  expect(may).toMatchObject({ month: "2027-05", panelsWh: 200, batteryWh: 147.5 });
  // Single days, the likelier sky three times: 40 60 160 160 160 200 200 200. Quantiles of type 7 (Hyndman & Fan 1996):
  // p10 at 0.7: 40 + 0.7 x 20 = 54; p90 at 6.3: 200.
  expect(may!.p10Wh).toBeCloseTo(54, 9);
  expect(may!.p90Wh).toBeCloseTo(200, 9);
  // June: (330 + 360 + 390) / 3; battery (250 + 240 + 275) / 3.
  expect(june).toMatchObject({ month: "2027-06", panelsWh: 360, batteryWh: 255 });
  // 100 120 140 280 280 280 300 300 300 320 320 320: p10 at 1.1: 120 + 0.1 x 20; p90 at 9.9: 320.
  expect(june!.p10Wh).toBeCloseTo(122, 9);
  expect(june!.p90Wh).toBeCloseTo(320, 9);
});

test("a clear sky has no spread to tell", () => {
  const [may] = monthExpectations(days, panelsWh, [{ weight: 1, dayWh: panelsWh }], false);
  expect(may).toEqual({ month: "2027-05", panelsWh: 200, batteryWh: 200, p10Wh: null, p90Wh: null });
});
