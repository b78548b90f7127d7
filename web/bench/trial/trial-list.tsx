import { createMemo, For, Show } from 'solid-js';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';
import { seamEffectReason, seamEffectWords } from '../../words/seam-effect-words.ts';
import { asSentence } from '../../words/sentence.ts';
import { useSpeech, useWords } from '../../words/use-words.tsx';
import { useArm } from '../arm/arm-state.ts';
import { useDesk } from '../../desk/desk.ts';
import { trialWords } from '../../grip/grip-words.ts';
import { blockOffer } from './block-offer.ts';

/** The trials of the session, newest first; one tap goes back to one. */
export function TrialList(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const arm = useArm();
  const words = useWords();
  const speech = useSpeech();
  const mixed = createMemo(() => {
    const state = arm();
    const offer = state === null ? null : blockOffer(desk.view(), props.session, state.care);
    return offer !== null && offer.gripAndTimeMixed ? offer.pair : null;
  });
  const say = () => words().bench.trial;
  const resume = (letter: string) => void desk.say('trial', { kind: 'trial-resumed', session: props.session.id, trial: letter });
  /** The count is of all that were thrown; how many of them are left out stands beside it. */
  const countWords = ({ count, excluded }: TrialView) => (excluded === 0 ? say().countInTrial(count) : `${say().countInTrial(count)}, ${say().excludedOf(excluded)}`);
  return (
    <>
      <ol class="trials" aria-label={say().trials}>
        <For each={[...props.session.trials].reverse()} fallback={<li class="quiet">{say().noTrials}</li>}>
          {(trial) => {
            const isNow = () => props.session.trial?.letter === trial.letter;
            return (
              <li aria-current={isNow() ? 'true' : undefined}>
                <b class="letter">{trial.letter}</b>
                <p>
                  <span class="what">{words().trade.intent[trial.intent]}<Show when={trial.family}>{(family) => <>, {words().plan.families.family[family()]}</>}</Show></span> <span class="quiet">{countWords(trial)}</span>
                  <span class="grip-said">{trialWords(trial, words())}</span>
                  <Show when={trial.count > 0}><span class="quiet seam-effect" data-seam-effect={trial.seamEffect.kind}>{asSentence((isNow() ? seamEffectReason : seamEffectWords)(trial.seamEffect, speech()))}</span></Show>
                </p>
                <Show when={!isNow()} fallback={<span class="now">{say().now}</span>}>
                  <Show when={arm()?.pain === null}><button type="button" aria-label={say().resume(trial.letter)} onClick={() => resume(trial.letter)}>{say().resumeShort}</button></Show>
                </Show>
              </li>
            );
          }}
        </For>
      </ol>
      <Show when={props.session.trials.length > 1}><p class="quiet blocks">{say().blocks} <Show when={mixed()}>{(pair) => <strong class="mixed">{words().bench.arm.mixed(pair()[0], pair()[1])}</strong>}</Show></p></Show>
    </>
  );
}
