/** Hands a file to the browser to keep. */
export function save(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  // Some browsers read it a while after the click.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
