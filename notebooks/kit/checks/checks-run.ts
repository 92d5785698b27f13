import { unpacked } from "../weather/unpack.ts";
import packed from "./outcomes.json?packed";
import type { Checks } from "./outcomes.ts";

/** What the library's checks came to when `npm run accuracy` was last run. */
export const checksRun = async (): Promise<Checks> => JSON.parse(await unpacked(packed)) as Checks;
