import { creditOf } from "../report/words/credits.ts";
import { shippedSidecars } from "./sidecars.ts";
import { switchedOn, type Verb } from "./verb.ts";

const help = `
The data that travels with panel-season: what each file holds, whose it is, under which licence, and what was changed.

  --json   the same as JSON on standard output, as the sidecars beside the files state it
`;

export const creditsVerb: Verb = {
  name: "credits",
  says: "whose data travels with it, under which licences",
  help,
  options: { json: { type: "boolean" } },
  mostWords: 0,
  run: async (words, voice) => {
    const sidecars = await shippedSidecars();
    voice.say(
      switchedOn(words, "json") ? JSON.stringify(sidecars, null, 2) : sidecars.map(creditOf).join("\n\n"),
    );
  },
};
