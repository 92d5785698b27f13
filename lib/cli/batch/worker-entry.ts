/**
 * What a worker of the pool loads. Built, that is the worker's own file. Run from its source, a worker first has to
 * learn to read TypeScript, which it does not take over from the thread that starts it.
 */
export const workerEntry = (): string => {
  if (!import.meta.url.endsWith(".ts")) return new URL("./worker.js", import.meta.url).href;
  const worker = JSON.stringify(new URL("./worker.ts", import.meta.url).href);
  const reader = JSON.stringify(import.meta.resolve("tsx/esm/api"));
  const code = `import { register } from ${reader}; register(); export default (await import(${worker})).default;`;
  return `data:text/javascript,${encodeURIComponent(code)}`;
};
