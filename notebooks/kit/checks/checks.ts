import type { Checks } from "../../../lib/report/checks.ts";
import { unpacked } from "../weather/unpack.ts";
import packed from "./outcomes.json?packed";

/** What the library's checks came to when `npm run accuracy` was last run. */
export const checksRun = async (): Promise<Checks> => JSON.parse(await unpacked(packed)) as Checks;
