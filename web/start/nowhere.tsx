import { useWords } from '../words/use-words.tsx';
import './start.css';

/** An address that no screen has. */
export function Nowhere(props: { readonly pathname: string }) {
  const words = useWords();
  return (
    <main class="start">
      <h1>{words().start.nowhere(props.pathname)}</h1>
      <p><a href="/">{words().start.home}</a></p>
    </main>
  );
}
