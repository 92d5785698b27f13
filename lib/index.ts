// biome-ignore-all assist/source/organizeImports: the rooms stand in the order in which light becomes an answer
/**
 * panel-season: watt-hours a day from a solar panel propped on cut-to-length legs.
 *
 * Conventions: degrees at every door, tilt up from horizontal, bearings clockwise from true north, UTC milliseconds,
 * civil dates in the site's zone, W/m2, W, Wh, mm, degC. The rooms stand in the order in which light becomes an answer.
 */
export * from "./plan/index.ts";
export * from "./sun/index.ts";
export * from "./sky/index.ts";
export * from "./plane/index.ts";
export * from "./panel/index.ts";
export * from "./stand/index.ts";
export * from "./circuit/index.ts";
export * from "./season/index.ts";
export * from "./report/index.ts";
