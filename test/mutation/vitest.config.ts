import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/**
 * The tests that mutants are shown to: by default every room's own; `PANEL_SEASON_TESTS` (globs, parted by semicolons)
 * narrows or widens that. Browsers, notebooks, the command line, packages and long comparisons are left out: each
 * mutant would pay for them, and what a room promises is to be shown by the tests beside it.
 */
const tests = process.env.PANEL_SEASON_TESTS?.split(";") ?? [
  "test/{plan,sun,sky,plane,panel,stand,circuit,season}/**/*.test.ts",
];

export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  test: {
    include: tests.filter((glob) => !glob.startsWith("!")),
    setupFiles: ["test/mutation/setup.ts"],
    exclude: ["node_modules", ...tests.filter((glob) => glob.startsWith("!")).map((glob) => glob.slice(1))],
    // Code made ready for mutation is slow, and the first run of all tests must not fail for that.
    testTimeout: 180_000,
    // Saves a third of the time; no test leaves anything behind that another could meet.
    isolate: false,
    env: { TZ: "Pacific/Kiritimati" },
  },
});
