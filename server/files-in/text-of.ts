/** How the text of a file is written. */
type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** By its mark, or by whether the beginning can be UTF-8; what cannot is taken for the encoding of old Western spreadsheets. */
function encodingOf(head: Uint8Array): Encoding {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  try {
    // The last letter may be cut in the middle.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The text of a file, piece by piece, without the mark at its beginning. */
export async function* textOf(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  let decoder: TextDecoder | null = null;
  for await (const chunk of bytes) {
    decoder ??= new TextDecoder(encodingOf(chunk));
    const text = decoder.decode(chunk, { stream: true });
    if (text !== '') yield text;
  }
  const rest = decoder?.decode() ?? '';
  if (rest !== '') yield rest;
}
