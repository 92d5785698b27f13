/** Hands a file to the person: the browser saves it, or asks where. */
export const saveBlob = (fileName: string, blob: Blob): void => {
  const url = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  link.click();
  // Some browsers read the address only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
};

/** Hands over a text file. */
export const saveText = (fileName: string, type: string, text: string): void =>
  saveBlob(fileName, new Blob([text], { type: `${type};charset=utf-8` }));
