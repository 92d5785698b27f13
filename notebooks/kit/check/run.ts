import { readFileSync } from "node:fs";
import { join } from "node:path";
import { NOTEBOOKS, notebookFiles } from "../build/notebook-files.ts";
import { readNotebook } from "./read-notebook.ts";
import { typeProblems } from "./typed-cells.ts";

const notebooks = notebookFiles().map((file) =>
  readNotebook(file, readFileSync(join(NOTEBOOKS, file), "utf8")),
);
const problems = typeProblems(notebooks);
for (const problem of problems) console.error(problem);
const cells = notebooks.reduce((sum, notebook) => sum + notebook.cells.length, 0);
console.log(
  `${cells} cells of ${notebooks.length} notebooks: ${problems.length === 0 ? "sound" : `${problems.length} problems`}`,
);
if (problems.length > 0) process.exitCode = 1;
