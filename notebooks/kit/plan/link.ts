/** A plan in a link: JSON, deflated, in the letters an address may hold. It stands after `#`, so no server ever sees it. */

const PREFIX = "#plan=";

const throughStream = async (
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> =>
  new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());

/** The fragment that carries a plan. */
export const fragmentOf = async (given: unknown): Promise<string> => {
  const bytes = await throughStream(
    new TextEncoder().encode(JSON.stringify(given)),
    new CompressionStream("deflate-raw"),
  );
  const letters = btoa(String.fromCharCode(...bytes));
  return `${PREFIX}${letters.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "")}`;
};

/**
 * The plan a fragment carries, or `null` when it carries none.
 *
 * @throws Error when it carries one that was cut short or changed on the way
 */
export const planOfFragment = async (fragment: string): Promise<unknown> => {
  if (!fragment.startsWith(PREFIX)) return null;
  try {
    const letters = fragment.slice(PREFIX.length).replaceAll("-", "+").replaceAll("_", "/");
    const bytes = Uint8Array.from(atob(letters), (letter) => letter.charCodeAt(0));
    return JSON.parse(
      new TextDecoder().decode(await throughStream(bytes, new DecompressionStream("deflate-raw"))),
    );
  } catch (cause) {
    throw new Error("The link's plan can't be read: it may have been cut short on the way", { cause });
  }
};
