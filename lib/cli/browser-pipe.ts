import { type ChildProcess, spawn } from "node:child_process";
import type { Readable, Writable } from "node:stream";

/** What the browser answers or tells, by the Chrome DevTools Protocol: an answer has an id, an event a method. */
interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: { readonly message: string };
}

/** A browser that is spoken to through two pipes: no port is opened, so nobody else can speak to it. */
export interface BrowserPipe {
  readonly ask: (
    method: string,
    params?: Readonly<Record<string, unknown>>,
    sessionId?: string,
  ) => Promise<Readonly<Record<string, unknown>>>;
  /** Resolves when the browser next tells of an event. */
  readonly told: (method: string) => Promise<void>;
  readonly close: () => void;
}

const SEPARATOR = "\0";

/** Descriptors at which a browser started with `--remote-debugging-pipe` reads and writes. */
const [BROWSER_READS, BROWSER_WRITES] = [3, 4];

/** Starts a browser and opens the pipes; every question fails when it ends, with the last that it said. */
export const browserPipe = (program: string, args: readonly string[], longestMs: number): BrowserPipe => {
  const child: ChildProcess = spawn(program, [...args, "--remote-debugging-pipe"], {
    stdio: ["ignore", "ignore", "pipe", "pipe", "pipe"],
    timeout: longestMs,
    killSignal: "SIGKILL",
  });
  const input = child.stdio[BROWSER_READS] as Writable;
  const output = child.stdio[BROWSER_WRITES] as Readable;
  const waiting = new Map<number, { resolve: (message: Message) => void; reject: (cause: Error) => void }>();
  const events = new Map<string, { resolve: () => void; reject: (cause: Error) => void }>();
  let said = "";
  let ended: Error | null = null;
  const end = (cause: Error): void => {
    ended ??= cause;
    for (const { reject } of [...waiting.values(), ...events.values()]) reject(ended);
    waiting.clear();
    events.clear();
  };
  child.stderr?.on("data", (text: Buffer) => {
    said = (said + text.toString()).slice(-1000);
  });
  child.on("error", end);
  child.on("exit", (code, signal) => {
    const lastLine = said.trim().split("\n").at(-1) ?? "";
    end(new Error(`the browser ended (${signal ?? code}) ${lastLine}`));
  });
  // A browser that ends closes its pipes; what matters is told by its exit.
  for (const stream of [input, output]) stream.on("error", () => undefined);

  let unread = "";
  output.setEncoding("utf8").on("data", (text: string) => {
    const parts = (unread + text).split(SEPARATOR);
    unread = parts.pop() ?? "";
    for (const part of parts) {
      const message = JSON.parse(part) as Message;
      if (message.id !== undefined) waiting.get(message.id)?.resolve(message);
      else if (message.method !== undefined) events.get(message.method)?.resolve();
    }
  });

  let lastId = 0;
  return {
    ask: async (method, params = {}, sessionId) => {
      if (ended !== null) throw ended;
      lastId += 1;
      const id = lastId;
      const answered = new Promise<Message>((resolve, reject) => waiting.set(id, { resolve, reject }));
      input.write(JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) }) + SEPARATOR);
      const { result = {}, error } = await answered;
      waiting.delete(id);
      if (error !== undefined) throw new Error(`${method}: ${error.message}`);
      return result;
    },
    told: (method) => new Promise((resolve, reject) => events.set(method, { resolve, reject })),
    close: () => {
      child.kill("SIGKILL");
    },
  };
};
