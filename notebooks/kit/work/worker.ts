import { skiesOfPlan } from "../../../lib/season/index.ts";
import { JOBS } from "./jobs.ts";
import type { Reply, Request } from "./messages.ts";

const tell = (reply: Reply): void => postMessage(reply);

/** A page shows progress some times a second; telling it of every step would cost more than the steps. */
const TELL_EVERY_MS = 80;

addEventListener("message", ({ data }: MessageEvent<Request>) => {
  const { job, plan, weatherCsv, climates } = data;
  let toldMs = 0;
  try {
    const answer = JOBS[job](plan, skiesOfPlan(plan, weatherCsv, climates), (share) => {
      const now = performance.now();
      if (now - toldMs < TELL_EVERY_MS) return;
      toldMs = now;
      tell({ kind: "progress", share });
    });
    tell({ kind: "answer", answer });
  } catch (cause) {
    tell({ kind: "failure", message: cause instanceof Error ? cause.message : String(cause) });
  }
});
