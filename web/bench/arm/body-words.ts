import type { BodyEvidence } from '../../../core/facts/advice-view.ts';
import { millisecondsText, movementText, speedText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';

/** One measure of the body in a sentence: what it says, by how much, and from where on it matters. */
export function bodyWords({ measure, difference, interval, smallest, way }: BodyEvidence, speech: Speech): string {
  const { body } = speech.words.bench.way;
  const amount = amountOf(measure, speech);
  const between = interval === null ? body.few : body.interval(signed(interval.low, amount), signed(interval.high, amount));
  return body.says(body.measure[measure], body.way[way], signed(difference, amount), between, amount(smallest));
}

type Amount = (value: number) => string;

function amountOf(measure: BodyEvidence['measure'], speech: Speech): Amount {
  switch (measure) {
    case 'deliveryDurationS': return (seconds) => millisecondsText(seconds, speech);
    case 'armSpeedMps':
    case 'fastballSpeedMps': return (mps) => speedText(mps, speech);
    case 'releaseHeightM':
    case 'releaseArmSideM':
    case 'extensionM': return (metres) => movementText(metres, speech, 1);
  }
}

/** A difference always shows its sign. */
function signed(value: number, amount: Amount): string {
  const text = amount(value);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}
