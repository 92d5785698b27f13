#!/usr/bin/env node
import { runCli } from "./cli/run.ts";

// A reader that has seen enough (`| head`) closes the pipe; that is no error of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

process.exitCode = await runCli(process.argv.slice(2), {
  say: (text) => process.stdout.write(`${text}\n`),
  remark: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY === true,
});
