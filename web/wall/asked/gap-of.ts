import type { GapView, MoundView } from '../../../core/facts/views.ts';
import type { GapLineData, GapPoint } from '../../charts/gap-scale.ts';
import { millisecondsText, numberText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';
import { lastThrow } from '../last-throw.ts';
import { inWords, type Shown } from './shown.ts';

/** The gap line of the last throw. */
export function gapOf(view: MoundView, speech: Speech): Shown<GapLineData> {
  const { words } = speech;
  const thrown = lastThrow(view);
  if (thrown === null) return inWords(words.plane.noThrow);
  if (thrown.excluded !== null) return inWords(words.trade.excluded);
  if (thrown.fastball) return inWords(words.trade.fastball);
  if (thrown.gap === null) return inWords(words.plane.noBaseline);
  if (typeof thrown.gap === 'string') return inWords(words.asked.gapLine.pathMissing(words.measures.missing[thrown.gap]));
  return { kind: 'picture', data: { generation: `${view.session?.id} ${view.generation}`, ...gapPicture(thrown.gap, speech) } };
}

/** The gap of one throw as a picture. */
export function gapPicture(gap: GapView, speech: Speech): Omit<GapLineData, 'generation'> {
  const say = speech.words.asked.gapLine;
  const decision = say.widths(numberText(gap.decisionWidths, 1, speech.language));
  const before = millisecondsText(gap.decisionBeforeS, speech);
  const basis = say.basis[gap.decisionBasis];
  const plate = say.widths(numberText(gap.plateWidths, 1, speech.language));
  const description = [say.description(decision, say.decided(before, basis), plate), ...(gap.decisionBasis === 'same-time' ? [] : [say.lineIs])];
  return {
    line: gap.lineWidths.map((widths, index): GapPoint => [index * gap.lineStepS, widths]),
    decisionS: gap.decisionS,
    decisionWidths: gap.decisionWidths,
    plateWidths: gap.plateWidths,
    texts: {
      name: say.title,
      description: description.join(' '),
      decision: [decision, say.decision],
      plate: [plate, say.plate],
      afterRelease: say.afterRelease,
      decided: { at: say.decisionAt(before), brief: say.beforeArrival(before), basis },
      milliseconds: 'ms',
    },
  };
}
