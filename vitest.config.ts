import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    setupFiles: ["test/setup.ts"],
    // Of a machine that does much else at once: alone, the slowest test takes a sixth of this.
    testTimeout: 60_000,
    // Zones are part of the job: a machine's own zone must never leak into a result.
    env: { TZ: "Pacific/Kiritimati" },
  },
});
