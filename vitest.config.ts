import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 30_000,
    // Zones are part of the job: a machine's own zone must never leak into a result.
    env: { TZ: "Pacific/Kiritimati" },
  },
});
