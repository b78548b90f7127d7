/** Reads a list that the server serves; null when it cannot be had. */
export async function fetchedList<T>(address: string): Promise<readonly T[] | null> {
  try {
    const reply = await fetch(address);
    return reply.ok ? ((await reply.json()) as T[]) : null;
  } catch {
    return null;
  }
}
