import { visit } from "jsonc-parser";
import type { Problem } from "../units/problem.ts";
import { pathText } from "./issues.ts";

/**
 * Keys that stand twice in one object of a JSON text: by the standard the last one wins, and the reader would never know.
 *
 * @param text JSON that can be parsed
 */
export const doubleKeys = (text: string): readonly Problem[] => {
  const problems: Problem[] = [];
  const open: Set<string>[] = [];
  visit(text, {
    onObjectBegin: () => {
      open.push(new Set());
    },
    onObjectEnd: () => {
      open.pop();
    },
    onObjectProperty: (key, _offset, _length, _line, _character, pathTo) => {
      const keys = open[open.length - 1];
      if (keys.has(key)) {
        problems.push({
          path: pathText([...pathTo(), key]),
          allowed: "stands twice",
          hint: "take one of them out: the second would win in silence",
        });
      }
      keys.add(key);
    },
  });
  return problems;
};
