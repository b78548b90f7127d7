import { createMemo, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useArm } from '../arm/arm-state.ts';
import { useDesk } from '../../desk/desk.ts';
import { blockOffer } from '../trial/block-offer.ts';

/** The next block of two trials that take turns: one tap goes over to it. While it lasts, how many are left of it. */
export function NextBlockOffer(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const arm = useArm();
  const words = useWords();
  const say = () => words().bench.arm;
  const offer = createMemo(() => {
    const state = arm();
    return state === null ? null : blockOffer(desk.view(), props.session, state.care);
  });
  /** A set without feedback is thrown to its end: no other trial in between. */
  const inSet = () => {
    const { nextDaySet, trial, feedback } = props.session;
    return nextDaySet?.kind === 'thrown' && nextDaySet.letter === trial?.letter && feedback.mode.kind === 'none';
  };
  const next = () => (inSet() ? null : (offer()?.next ?? null));
  return (
    <Show when={next()}>
      {(block) => (
        <Show when={block().trial !== props.session.trial?.letter} fallback={<p class="next-block" data-trial={block().trial}>{say().blockNow(block().trial, block().throws)}</p>}>
          <button type="button" class="next-block main" data-trial={block().trial} onClick={() => void desk.say('intent', { kind: 'trial-resumed', session: props.session.id, trial: block().trial })}>
            {say().block(block().trial, block().throws)}
          </button>
        </Show>
      )}
    </Show>
  );
}
