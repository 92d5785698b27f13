import { assumedWords } from "../report/words/assumed-words.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { textOption, type Verb, type VerbWords, type Voice } from "./verb.ts";

const help = `
  panel-season plan [PLAN] [options]

The plan as it is read: checked, every default filled in, every length in millimetres. What comes out is a
plan again; files that it names stay relative to its folder. What of a nameplate had to be assumed is told
beside it.

  --out FILE       the whole plan as a file
  --json           the whole plan as JSON on one line
  --from --to --step --climate   as in season
  --force          replace a file that is there already

Examples
  panel-season plan                                     the demo plan
  panel-season plan my-plan.json --out whole-plan.json
`;

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const plan = planWithOptions(planFile.plan, words);
  const whole = JSON.stringify(plan, null, 2);
  const out = textOption(words, "out");
  await deliver(
    {
      heading: null,
      files: out === undefined ? [] : [{ path: out, content: `${whole}\n` }],
      json: () => plan,
      lines: out === undefined ? [whole] : [],
    },
    words,
    voice,
  );
  for (const line of assumedWords(plan)) voice.remark(`${line}\n`);
};

export const planVerb: Verb = {
  name: "plan",
  says: "the plan as it is read, every default filled in",
  help,
  options: { ...PLAN_OPTIONS, ...DELIVERY_OPTIONS, out: { type: "string" } },
  mostWords: 1,
  run,
};
