#!/usr/bin/env node
import { reasonOf } from "./cli/file-reasons.ts";
import { EXIT, runCli } from "./cli/run.ts";

/** A reader that has seen enough (`| head`) closes the pipe: no error of ours, and no reason to work on. */
const readerGone = (error: NodeJS.ErrnoException): boolean => error.code === "EPIPE";

process.stderr.on("error", (error: NodeJS.ErrnoException) => {
  process.exit(readerGone(error) ? EXIT.answered : EXIT.badInput);
});
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (readerGone(error)) process.exit(EXIT.answered);
  process.stderr.write(`the output can't be written: ${reasonOf(error)}\n`, () =>
    process.exit(EXIT.badInput),
  );
});

process.exitCode = await runCli(process.argv.slice(2), {
  say: (text) => process.stdout.write(`${text}\n`),
  remark: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY === true,
});
