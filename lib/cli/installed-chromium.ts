import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const PROGRAM_NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "microsoft-edge",
  "microsoft-edge-stable",
];

const USUAL_PLACES: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: ["/usr/bin", "/usr/local/bin", "/snap/bin", "/opt/google/chrome"].flatMap((folder) =>
    PROGRAM_NAMES.map((name) => join(folder, name)),
  ),
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  ],
};

const windowsPlaces = (env: NodeJS.ProcessEnv): readonly string[] =>
  [env.ProgramFiles, env["ProgramFiles(x86)"], env.LocalAppData]
    .filter((folder): folder is string => folder !== undefined)
    .flatMap((folder) => [
      join(folder, "Google", "Chrome", "Application", "chrome.exe"),
      join(folder, "Chromium", "Application", "chrome.exe"),
      join(folder, "Microsoft", "Edge", "Application", "msedge.exe"),
    ]);

const onPath = (env: NodeJS.ProcessEnv): readonly string[] =>
  (env.PATH ?? "")
    .split(delimiter)
    .filter((folder) => folder !== "")
    .flatMap((folder) => PROGRAM_NAMES.map((name) => join(folder, name)));

/**
 * Where a Chromium (or Chrome, or Edge) is installed: CHROME_PATH if set, else the usual places, else the PATH.
 *
 * @returns the program's path, or `null` when none is found
 * @throws Error when CHROME_PATH names a file that is not there: a wish is never silently replaced
 */
export const installedChromium = (
  env: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  exists: (path: string) => boolean = existsSync,
): string | null => {
  const wished = env.CHROME_PATH;
  if (wished !== undefined && wished !== "") {
    if (!exists(wished)) throw new Error(`CHROME_PATH names ${wished}, and there is no such file`);
    return wished;
  }
  const usual = platform === "win32" ? windowsPlaces(env) : (USUAL_PLACES[platform] ?? []);
  return [...usual, ...onPath(env)].find((path) => exists(path)) ?? null;
};

/** What every headless start needs: no sandbox inside containers, and not a word to any other host. */
export const QUIET_CHROMIUM = [
  "--headless",
  "--no-sandbox",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--no-pings",
] as const;
