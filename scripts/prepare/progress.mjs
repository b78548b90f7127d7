const TELL_EVERY_MS = 5_000;

/**
 * Says what is being done, every few seconds that it still is, and how long it took.
 * @template T
 * @param {string} what for example "Installing packages"
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function withProgress(what, work) {
  const startedMs = performance.now();
  const seconds = () => ((performance.now() - startedMs) / 1000).toFixed(1);
  console.log(`${what} …`);
  const ticker = setInterval(() => console.log(`${what} … ${Math.round(Number(seconds()))} s`), TELL_EVERY_MS);
  try {
    const result = await work();
    console.log(`${what}: done in ${seconds()} s`);
    return result;
  } finally {
    clearInterval(ticker);
  }
}
