import type { Plan } from "../../../lib/plan/plan.ts";
import { el, saySo, type ViewOf, viewOf } from "../dom.ts";
import { planFiles } from "../skies.ts";
import { unpacked } from "../weather/unpack.ts";
import type { JobAnswer, JobName, JobOptions } from "./jobs.ts";
import type { Reply, Request } from "./messages.ts";
import workerCode from "./worker.ts?worker-code";

let codeUrl: Promise<string> | null = null;

const newWorker = async (): Promise<Worker> => {
  codeUrl ??= unpacked(workerCode).then((code) =>
    URL.createObjectURL(new Blob([code], { type: "text/javascript" })),
  );
  return new Worker(await codeUrl);
};

/** One worker a job: asking anew lets the question before it go. */
const running = new Map<JobName, Worker>();

/** The latest start of each job, which tells a worker that is still wanted from one that came too late. */
const latest = new Map<JobName, symbol>();

const stop = (job: JobName): void => {
  running.get(job)?.terminate();
  running.delete(job);
  latest.delete(job);
};

/**
 * Work beside the page, with its progress and a way to call it off. View it in a cell: its value is `null` until there is
 * an answer. When the plan changes, the cell asks anew and the work before it is stopped.
 *
 * @param says what is being done, as a person says it: `Trying aims`
 */
export const longWork = <Name extends JobName>(
  job: Name,
  plan: Plan,
  options: JobOptions<Name>,
  says: string,
): ViewOf<JobAnswer<Name> | null> => {
  stop(job);
  const bar = el("progress", { "aria-label": says });
  const state = el("span", { role: "status" }, `${says}…`);
  const cancel = el("button", { type: "button", class: "quiet" }, "Stop");
  const again = el("button", { type: "button", class: "quiet", hidden: true }, "Start again");
  const element = viewOf<JobAnswer<Name> | null>(
    el("div", { class: "work" }, bar, state, cancel, again),
    null,
  );
  const rest = (words: string): void => {
    stop(job);
    bar.hidden = true;
    cancel.hidden = true;
    again.hidden = false;
    state.textContent = words;
  };
  const hear = ({ data }: MessageEvent<Reply>): void => {
    if (data.kind === "progress") {
      bar.value = data.share;
    } else if (data.kind === "failure") {
      rest(data.message);
    } else {
      stop(job);
      element.hidden = true;
      // The worker runs the same table of jobs: what it answers under this name is this type.
      element.value = data.answer as JobAnswer<Name>;
      saySo(element);
    }
  };
  const start = async (): Promise<void> => {
    stop(job);
    const mine = Symbol(job);
    latest.set(job, mine);
    bar.hidden = false;
    bar.removeAttribute("value");
    cancel.hidden = false;
    again.hidden = true;
    state.textContent = `${says}…`;
    const worker = await newWorker();
    // Another question, or a press of Stop, may have come while the code was being opened.
    if (latest.get(job) !== mine) return worker.terminate();
    running.set(job, worker);
    worker.onmessage = hear;
    worker.onerror = ({ message }) => rest(message);
    try {
      worker.postMessage({ job, plan, options, ...(await planFiles(plan)) } satisfies Request);
    } catch (cause) {
      rest(cause instanceof Error ? cause.message : String(cause));
    }
  };
  cancel.addEventListener("click", () => rest(`${says}: stopped.`));
  again.addEventListener("click", () => void start());
  void start();
  return element;
};
