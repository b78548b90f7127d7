import { theme } from '../../theme.ts';
import { useWords } from '../../words/use-words.tsx';

/** What was shown before the sun came out. */
let before: typeof theme.chosen extends () => infer T ? T : never = null;

/** Out into the sun and back with one tap. */
export function toggleSun(): void {
  const shown = theme.chosen();
  if (shown !== 'sun') before = shown;
  theme.choose(shown === 'sun' ? before : 'sun');
}

export function SunButton() {
  const words = useWords();
  return <button type="button" class="sun" aria-pressed={theme.chosen() === 'sun'} onClick={toggleSun}>{words().bench.dock.sun}</button>;
}
