import {
  type BatteryModel,
  batteryModel,
  efficiencyCurve,
  emptyLedger,
  loadColumns,
  runOhm,
  stepBattery,
  warmthOf,
} from "../../lib/circuit/index.ts";
import { currentAt, curveAt, type DiodeCurve, faimanCellC, maxPowerPoint } from "../../lib/panel/index.ts";
import type { Plan } from "../../lib/plan/index.ts";
import { CLEAN_GLASS_ANGULAR_LOSS, lightOnPlane, martinRuizGlass } from "../../lib/plane/index.ts";
import { airOfDays, batterySteps } from "../../lib/season/battery/battery-steps.ts";
import { branchesOf, type SetUp } from "../../lib/season/battery/set-up.ts";
import type { SkySource } from "../../lib/season/light/sky-source.ts";

/** A panel's curve with its cable in series, and how often it stands there. */
interface LitCurve {
  readonly curve: DiodeCurve;
  readonly times: number;
}

const ampsTogether = (lit: readonly LitCurve[], volts: number): number =>
  lit.reduce((sum, { curve, times }) => sum + times * Math.max(0, currentAt(curve, volts)), 0);

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Most power of several curves at one voltage, by golden section; of one, by its own Newton. */
const mostWatts = (lit: readonly LitCurve[], leastV: number): number => {
  if (lit.length === 1) {
    const peak = maxPowerPoint(lit[0].curve);
    return (
      lit[0].times *
      (peak.volts >= leastV ? peak.watts : leastV * Math.max(0, currentAt(lit[0].curve, leastV)))
    );
  }
  let [low, high] = [leastV, 60];
  while (high - low > 1e-3) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (a * ampsTogether(lit, a) > b * ampsTogether(lit, b)) high = b;
    else low = a;
  }
  return low * ampsTogether(lit, low);
};

/** Watts into the battery at one moment and state of charge. */
const intoBattery = (
  setUp: SetUp,
  battery: BatteryModel,
  lit: readonly LitCurve[],
  storedWh: number,
): number => {
  const { controller } = setUp.circuit;
  if (controller.kind === "mppt") {
    const limitW = controller.maxCurrentA * battery.meanV;
    const inW = mostWatts(lit, battery.meanV + controller.headroomV);
    return Math.min(limitW, efficiencyCurve(controller.efficiency, limitW).outW(inW));
  }
  const node = Math.round((storedWh / battery.usableWh) * (battery.restVAt.length - 1));
  const heldV = battery.restVAt[node] + controller.dropV;
  // The common resistance by going round twice.
  const commonOhm = runOhm(setUp.circuit.batteryCable) + battery.chargeOhm;
  const first = ampsTogether(lit, heldV);
  return Math.min(controller.maxCurrentA, ampsTogether(lit, heldV + first * commonOhm)) * battery.meanV;
};

/**
 * Battery seasons as one would write them down first: for each set-up, each season and each hour, ask what falls on each
 * panel, how warm it is, where its curve stands, and step the battery; an object for each answer, nothing shared between
 * set-ups. The sky of a day is that of its nearest rung, given for free.
 *
 * @param seasons How many of the source's seasons to live through.
 * @returns Short days, added up over set-ups and seasons.
 */
export const straightforwardBattery = (
  plan: Plan,
  source: SkySource & { readonly kind: "drawn" },
  setUps: readonly SetUp[],
  seasons: number,
): number => {
  const { sun, rungs, sequences } = source;
  const glass = martinRuizGlass(CLEAN_GLASS_ANGULAR_LOSS);
  const steps = batterySteps(sun);
  const air = airOfDays(sun, rungs[0].sky.sky, plan.air.temperatureC);
  const ratioStep = rungs[1].ratio - rungs[0].ratio;
  let shortDays = 0;
  for (const setUp of setUps) {
    const battery = batteryModel(setUp.battery);
    const branches = branchesOf(setUp);
    const loads = loadColumns(setUp.loads, steps, plan.site.timeZone);
    for (let season = 0; season < seasons; season += 1) {
      let storedWh = battery.startWh;
      for (let day = 0; day < sun.days.length; day += 1) {
        const rung = Math.round(
          (sequences.ratio[season * sequences.days + day] - rungs[0].ratio) / ratioStep,
        );
        const { sky } = rungs[Math.max(0, Math.min(rungs.length - 1, rung))].sky;
        const ledger = emptyLedger();
        for (let at = 0; at < steps.perDay; at += 1) {
          const step = day * steps.perDay + at;
          const row = steps.row[step];
          let offeredW = 0;
          if (row >= 0) {
            const lit = branches.map((branch, index): LitCurve => {
              const { unit, aims } = setUp.panels[index];
              const aim = aims.aims[aims.ofRow === null ? 0 : aims.ofRow[row]];
              const light = lightOnPlane(
                { east: sun.east[row], north: sun.north[row], up: sun.up[row] },
                {
                  beamNormal: sky.beamNormal[row],
                  diffuse: sky.diffuse[row],
                  global: sky.global[row],
                  extraterrestrial: sky.extraterrestrial[row],
                  airMass: sky.airMass[row],
                  albedo: sky.albedo[row],
                },
                aim,
                glass,
                plan.sky.toPlane,
              );
              const cellC = faimanCellC(light.plane, sky.airC[row], sky.windMs[row], unit.model.heatLoss);
              const curve = curveAt(branch.reference, light.absorbed, cellC);
              return {
                curve: { ...curve, seriesOhm: curve.seriesOhm + branch.shareLeft * branch.cableOhm },
                times: branch.howMany * branch.shareLeft,
              };
            });
            offeredW = intoBattery(setUp, battery, lit, storedWh) * steps.litShare[row];
          }
          const loadW = loads.cooling.reduce(
            (sum, cooler) => sum + cooler.duty(air[day]) * cooler.runningW[step],
            loads.steadyW[step],
          );
          storedWh = stepBattery(
            battery,
            warmthOf(battery, air[day]),
            storedWh,
            { offeredW, loadW, ownW: setUp.circuit.controller.ownW, chargerW: 0 },
            steps.hours,
            ledger,
          );
        }
        if (ledger.short >= 1) shortDays += 1;
      }
    }
  }
  return shortDays;
};
