import { useWords } from '../../words/use-words.tsx';

/** What the tool is not, and when to stop. It stands on Bench at all times, quietly. */
export function ArmCare() {
  const words = useWords();
  return (
    <aside class="arm-care" aria-label={words().bench.session.care}>
      <p>{words().bench.session.careText}</p>
    </aside>
  );
}
