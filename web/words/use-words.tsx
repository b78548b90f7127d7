import { createContext, createEffect, createMemo, useContext, type Accessor, type JSX } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import { language as asked, units as askedUnits } from '../viewer.ts';
import { chooseLanguage, WORDS, type Language } from './language.ts';
import type { Words } from './words.ts';
import { speechIn, type Speech, type Units } from './speech.ts';

interface Spoken {
  readonly language: Accessor<Language>;
  readonly units: Accessor<Units>;
}

/** What holds where no athlete is known: what the viewer asked for, then the browser. */
const unspoken: Spoken = {
  language: () => chooseLanguage(asked.chosen(), null, navigator.languages),
  units: () => askedUnits.chosen() ?? 'imperial',
};
const SpokenContext = createContext<Spoken>(unspoken);

/** Speaks the athlete's language and units to everything inside, unless the viewer asked for others. */
export function Speaking(props: { readonly athlete: Athlete | null; readonly children: JSX.Element }) {
  const spoken: Spoken = {
    language: createMemo(() => chooseLanguage(asked.chosen(), props.athlete?.language ?? null, navigator.languages)),
    units: createMemo(() => askedUnits.chosen() ?? props.athlete?.units ?? 'imperial'),
  };
  createEffect(() => {
    document.documentElement.lang = spoken.language();
  });
  return <SpokenContext.Provider value={spoken}>{props.children}</SpokenContext.Provider>;
}

/** The words of the language spoken here. */
export function useWords(): Accessor<Words> {
  const { language } = useContext(SpokenContext);
  return () => WORDS[language()];
}

/** Words, language and units together: all that a measure needs to be said. */
export function useSpeech(): Accessor<Speech> {
  const { language, units } = useContext(SpokenContext);
  return createMemo(() => speechIn(language(), units()));
}
