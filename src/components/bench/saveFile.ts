// Hands a file to the browser to be saved.

/** Saves a file under a name, as a click on a link to it would. */
export function saveFile(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the file after the click has returned.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
