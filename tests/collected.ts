import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Collects what nothing holds any more, at once. */
export function collect(): void {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
}
