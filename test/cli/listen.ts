import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { runCli } from "../../lib/cli/run.ts";

export interface Heard {
  readonly code: number;
  readonly said: string;
  readonly remarked: string;
}

/** Runs one command line in this process and listens. */
export const listen = async (...words: readonly string[]): Promise<Heard> => {
  let said = "";
  let remarked = "";
  const code = await runCli(words, {
    say: (text) => {
      said += `${text}\n`;
    },
    remark: (text) => {
      remarked += text;
    },
    watched: false,
  });
  return { code, said, remarked };
};

/** A folder of its own for one test, gone when it ends. */
export const ownFolder = async (): Promise<string> => {
  const folder = await mkdtemp(join(tmpdir(), "panel-season-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
};
