import type { ArmReport } from '../../core/facts/care-view.ts';
import type { MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';

/** What Glance shows, in the feedback that the coach chose. Reported pain comes before everything. */
export type GlanceShows =
  | { readonly kind: 'pain'; readonly report: ArmReport }
  | { readonly kind: 'ready'; readonly first: boolean }
  | { readonly kind: 'throw'; readonly thrown: ThrowView }
  | { readonly kind: 'ask-first'; readonly thrown: ThrowView }
  | { readonly kind: 'quiet-good' }
  | { readonly kind: 'waits'; readonly more: number }
  | { readonly kind: 'summary'; readonly throws: readonly ThrowView[]; readonly onTarget: number; readonly judged: number }
  | { readonly kind: 'no-feedback' };

/**
 * Feedback is about the work pitch: a fastball or an excluded throw that came last is shown as it is in every mode, except
 * in a set without feedback, in which nothing is.
 */
export function glanceShows({ throws }: Pick<MoundView, 'throws'>, { armCare, feedback }: Pick<SessionView, 'armCare' | 'feedback'>): GlanceShows {
  if (armCare.kind === 'pain-reported') return { kind: 'pain', report: armCare.report };
  const { now } = feedback;
  const last = throws.at(-1);
  if (now.kind === 'no-feedback') return now;
  if (last === undefined) return { kind: 'ready', first: true };
  if (last.fastball || last.excluded !== null) return { kind: 'throw', thrown: last };
  switch (now.kind) {
    case 'nothing-thrown': return { kind: 'ready', first: false };
    case 'full': return thrownAt(throws, now.place, (thrown) => ({ kind: 'throw', thrown }));
    case 'ask-first': return thrownAt(throws, now.place, (thrown) => ({ kind: 'ask-first', thrown }));
    case 'quiet-good': return { kind: 'quiet-good' };
    case 'waits': return { kind: 'waits', more: now.more };
    case 'summary': return { kind: 'summary', throws: throws.filter(({ place }) => now.places.includes(place)), onTarget: now.onTarget, judged: now.judged };
  }
}

function thrownAt(throws: readonly ThrowView[], place: number, show: (thrown: ThrowView) => GlanceShows): GlanceShows {
  const thrown = throws.find((one) => one.place === place);
  return thrown === undefined ? { kind: 'ready', first: false } : show(thrown);
}
