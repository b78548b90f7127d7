import { INTENTS } from '../../../core/facts/vocabulary.ts';
import type { KeyGroup } from '../../keys/key-list.tsx';
import { LIST_KEY } from '../../keys/listen.ts';
import type { Words } from '../../words/words.ts';

/** The keys of Bench as its list shows them. What each does stands in take-key.ts. */
export function keyGroups({ bench: { keys: say }, trade }: Words): KeyGroup[] {
  const intents = say.intent(trade.intent[INTENTS[0]], trade.intent[INTENTS.at(-1)!]);
  const line = (keys: readonly string[], does: string) => ({ keys, does });
  return [
    { title: say.next, keys: [line(['1', '–', String(INTENTS.length)], intents), line(['B'], say.block), line(['G'], say.begin), line(['M'], say.pass)] },
    { title: say.said, keys: [line(['T'], say.trial), line(['L'], say.throw), line(['A'], say.arm), line(['N'], say.note), line(['K'], say.bookmark), line(['U'], say.acts), line(['Z'], say.undo)] },
    { title: say.screen, keys: [line(['ArrowLeft', 'ArrowRight'], say.places), line(['S'], say.sun), line([LIST_KEY], say.list), line(['Escape'], say.escape)] },
  ];
}
