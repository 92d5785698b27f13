import { existsSync } from "node:fs";
import { mkdir, mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** A browser program, and the environment it needs beside the usual one. */
export interface BrowserProgram {
  readonly executablePath: string;
  readonly env: Readonly<Record<string, string>>;
  readonly args: readonly string[];
}

const CACHE = fileURLToPath(new URL("../../node_modules/.cache/panel-season", import.meta.url));

/** What the package's own font settings should have said: they name folders of another machine. */
const fontSettings = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}/fonts/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${folder}/fonts-cache</cachedir>
</fontconfig>
`;

const unpack = async (into: string): Promise<void> => {
  const before = { TMPDIR: process.env.TMPDIR, AWS_EXECUTION_ENV: process.env.AWS_EXECUTION_ENV };
  const { LD_LIBRARY_PATH, FONTCONFIG_PATH } = process.env;
  // The package unpacks to the temporary folder, and its system libraries only where it believes it is on a bare host.
  process.env.TMPDIR = into;
  process.env.AWS_EXECUTION_ENV = "AWS_Lambda_nodejs20.x";
  try {
    const { default: chromium } = await import("@sparticuz/chromium");
    await chromium.executablePath();
  } finally {
    for (const [name, value] of Object.entries({ ...before, LD_LIBRARY_PATH, FONTCONFIG_PATH })) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
};

/**
 * The Chromium that comes with the development packages, with the system libraries and one font family of its own:
 * enough on a bare Linux. Unpacked once, beside its final place and then moved, so that tests running
 * at the same time never meet half of it.
 *
 * @returns `null` where the package has no program for the machine (it is built for Linux on x64)
 */
export const ownChromium = async (): Promise<BrowserProgram | null> => {
  if (process.platform !== "linux" || process.arch !== "x64") return null;
  const folder = join(CACHE, "chromium-147");
  if (!existsSync(folder)) {
    await mkdir(dirname(folder), { recursive: true });
    const beside = await mkdtemp(`${folder}-`);
    await unpack(beside);
    await writeFile(join(beside, "fonts", "fonts.conf"), fontSettings(folder));
    try {
      await rename(beside, folder);
    } catch (cause) {
      await rm(beside, { recursive: true, force: true });
      if (!existsSync(folder)) throw cause;
    }
  }
  return {
    executablePath: join(folder, "chromium"),
    env: { LD_LIBRARY_PATH: join(folder, "al2023", "lib"), FONTCONFIG_PATH: join(folder, "fonts") },
    // The program was built for one process family on one host; these are what it runs under there.
    args: ["--no-zygote", "--disable-gpu", "--font-render-hinting=none"],
  };
};
