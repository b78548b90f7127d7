import { createUniqueId, For, Show } from 'solid-js';
import type { FamilyAdvice, FamilyFit } from '../../core/coaching/families.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { useSpeech } from '../words/use-words.tsx';
import { answerWords, changeWords, degreeText, fitWords, ownReasons, sharedWords } from './reason-words.ts';

interface Choosing {
  readonly chosen: Family;
  readonly onChoose: (family: Family) => void;
}

/** The three families in order, with how well each fits, why, and what would change the answer. One is chosen to plan with. */
export function Families(props: Choosing & { readonly advice: FamilyAdvice; readonly mayThrow: boolean }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.families;
  const group = createUniqueId();
  return (
    <section class="plan-families" aria-labelledby="families-title">
      <h2 id="families-title"><span class="over">{say().title}</span> {answerWords(props.advice, speech())}</h2>
      <ol class="families">
        <For each={props.advice.ranking}>
          {(fit, index) => <One fit={fit} rank={index() + 1} advice={props.advice} group={group} chosen={props.chosen} onChoose={props.onChoose} />}
        </For>
      </ol>
      <Sentences title={say().sharedTitle} sentences={sharedWords(props.advice, speech())} />
      <Sentences title={say().changeTitle} sentences={changeWords(props.advice.wouldChange, props.mayThrow, speech())} />
      <p class="quiet small">{say().fitMeans}</p>
    </section>
  );
}

function One(props: Choosing & { readonly fit: FamilyFit; readonly rank: number; readonly advice: FamilyAdvice; readonly group: string }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.families;
  const family = () => props.fit.family;
  return (
    <li class="family" classList={{ chosen: props.chosen === family() }}>
      <label>
        <input type="radio" name={props.group} checked={props.chosen === family()} aria-label={`${say().choose(say().family[family()])}, ${say().fitIs(degreeText(props.fit.degree, speech()))}`} onChange={() => props.onChoose(family())} />
        <span class="rank" aria-hidden="true">{props.rank}</span>
        <span class="family-name">{say().family[family()]}</span>
        <Degree degree={props.fit.degree} />
      </label>
      <p class="how quiet">{say().how[family()]}</p>
      <ul class="reasons">
        <For each={ownReasons(props.fit, props.advice, speech())}>
          {({ weighs, words }) => <li data-weighs={weighs}><span class="unseen">{say().weighs[weighs]}: </span>{words}</li>}
        </For>
      </ul>
    </li>
  );
}

/** How well it fits: as a length, in words and as a number. */
function Degree(props: { readonly degree: number }) {
  const speech = useSpeech();
  return (
    <span class="degree">
      <span class="degree-words">{fitWords(props.degree, speech())} <b>{degreeText(props.degree, speech())}</b></span>
      <svg class="degree-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect class="whole" width="100" height="6" /><rect class="part" width={props.degree * 100} height="6" />
      </svg>
    </span>
  );
}

function Sentences(props: { readonly title: string; readonly sentences: readonly string[] }) {
  return (
    <Show when={props.sentences.length > 0}>
      <h3>{props.title}</h3>
      <ul class="sentences"><For each={props.sentences}>{(sentence) => <li>{sentence}</li>}</For></ul>
    </Show>
  );
}
