/** circuit: cables, controllers, batteries and loads; from watts at the panel to watt-hours that were of use. */
export { type Ampacity, airFactor, ampacityOf, type InsulationC } from "./ampacity.ts";
export { awgAreaMm2, awgDiameterMm, awgOhmPerKm } from "./awg.ts";
export {
  type BatteryWarmth,
  balanceResidual,
  type EnergyLedger,
  emptyLedger,
  type StepDemand,
  stepBattery,
  warmthOf,
} from "./balance.ts";
export { type BatteryModel, batteryModel } from "./battery.ts";
export { branchFuseFor } from "./branch-fuses.ts";
export { type Branch, type BranchLight, ParallelBranches } from "./branches.ts";
export type { RatedPanels } from "./build.ts";
export { circuitRemarks, coldOpenV, planRemarks } from "./checks.ts";
export { capacityShare, nominalV, restV } from "./chemistry.ts";
export { type CableDrop, CUSTOMARY_DROP_PCT, cableDrop, thickerRuns } from "./drop.ts";
export { type EfficiencyCurve, efficiencyCurve } from "./efficiency.ts";
export { type CurrentCheck, type CurrentVerdict, checkCurrent, FUSE_AMPS, fuseAtLeast } from "./fuse.ts";
export { type Harvest, type Harvester, harvester } from "./harvest.ts";
export { currentIntoHeldV } from "./held-voltage.ts";
export { IEC_AREAS_MM2, type IecClass, iecOhmPerKm } from "./iec-sizes.ts";
export { type LoadCutOff, loadCutOffOf, loadsComeBack } from "./load-cut-off.ts";
export {
  applianceDayWh,
  type CoolingLoad,
  coolingDuty,
  type DaySteps,
  dayLoadWh,
  idleInverterW,
  type LoadColumns,
  loadColumns,
} from "./loads.ts";
export { maxPowerV } from "./max-power.ts";
export { iecTemperatureFactor, type Metal, temperatureFactor } from "./metal.ts";
export { type OperatingCurve, operatingCurve } from "./operating-points.ts";
export type { CircuitRemark, RemarkAbout } from "./remark.ts";
export { dailyAh, type StorageNeed, storageDays95, storageWh } from "./sizing.ts";
export { stringReference } from "./string.ts";
export { areaMm2Of, ohmPerKm, runOhm, type Strands, type WireSize, wireSizeOf, wireText } from "./wire.ts";
