import { answerLine, type LineTask } from "./answer-line.ts";
import type { BatchResult } from "./result.ts";

/** What each worker of the pool does. */
export default (task: LineTask): Promise<BatchResult> => answerLine(task);
