import { skiesOfPlan } from "../../../lib/season/index.ts";
import { JOBS, planOfJob } from "./jobs.ts";
import type { Reply, Request } from "./messages.ts";

const tell = (reply: Reply): void => postMessage(reply);

/** A page shows progress some times a second; telling it of every step would cost more than the steps. */
const TELL_EVERY_MS = 80;

addEventListener("message", ({ data }: MessageEvent<Request>) => {
  const { job, options, weatherCsv, climates } = data;
  const plan = planOfJob(job, data.plan);
  let toldMs = 0;
  try {
    const progress = (share: number): void => {
      const now = performance.now();
      if (now - toldMs < TELL_EVERY_MS) return;
      toldMs = now;
      tell({ kind: "progress", share });
    };
    // The page's `longWork` pairs each job with its own options; here they are only passed on.
    const run = JOBS[job] as (...given: readonly unknown[]) => unknown;
    tell({ kind: "answer", answer: run(plan, skiesOfPlan(plan, weatherCsv, climates), progress, options) });
  } catch (cause) {
    tell({ kind: "failure", message: cause instanceof Error ? cause.message : String(cause) });
  }
});
