import { delimiter, join } from "node:path";
import { expect, test } from "vitest";
import { installedChromium } from "../../lib/cli/installed-chromium.ts";

const only =
  (...there: readonly string[]) =>
  (path: string): boolean =>
    there.includes(path);

test("a wish comes first, and is never silently replaced", () => {
  const usual = "/usr/bin/chromium";
  expect(installedChromium({ CHROME_PATH: "/mine" }, "linux", only("/mine", usual))).toBe("/mine");
  expect(() => installedChromium({ CHROME_PATH: "/mine" }, "linux", only(usual))).toThrow(
    "CHROME_PATH names /mine, and there is no such file",
  );
});

test("then the usual places of the system, then the path, then nothing", () => {
  expect(installedChromium({}, "linux", only("/snap/bin/chromium"))).toBe("/snap/bin/chromium");
  const mac = "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome";
  expect(installedChromium({}, "darwin", only(mac))).toBe(mac);
  const windows = join("C:\\Programs", "Microsoft", "Edge", "Application", "msedge.exe");
  expect(installedChromium({ ProgramFiles: "C:\\Programs" }, "win32", only(windows))).toBe(windows);
  const onPath = join("/opt/tools", "google-chrome");
  expect(installedChromium({ PATH: ["/bin", "/opt/tools"].join(delimiter) }, "linux", only(onPath))).toBe(
    onPath,
  );
  expect(installedChromium({}, "linux", only())).toBeNull();
});
