import { createAskedFor, type AskedFor } from '../asked-for.ts';
import { settingsIn } from '../settings.ts';

/** Whether the numbers of the last throw are asked for, as the address has it at first; by the key N. */
export function createNumbersRequest(): AskedFor {
  return createAskedFor('numbers', '1', 'n', settingsIn(location.search).numbers);
}
