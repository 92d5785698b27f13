/** The text of a file imported with `?packed`. */
export const unpacked = async (packed: string): Promise<string> => {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
};
