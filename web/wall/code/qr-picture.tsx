import { encode } from 'uqr';

/** A scanner needs four modules of quiet round a code. */
const QUIET = 4;

/** A QR code, dark on light whatever the theme: half of the cameras do not read it the other way round. */
export function QrPicture(props: { readonly text: string; readonly said: string }) {
  const code = () => encode(props.text, { ecc: 'M', border: QUIET });
  const squares = () => code().data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x},${y}h1v1h-1z`] : []))).join('');
  return (
    <svg class="code-picture" role="img" aria-label={props.said} viewBox={`0 0 ${code().size} ${code().size}`} shape-rendering="crispEdges">
      <path d={squares()} />
    </svg>
  );
}
