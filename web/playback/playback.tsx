/** Playback: the list of recorded sessions, or one of them. */
export default function Playback(props: { readonly session: string | null }) {
  return <main>{props.session}</main>;
}
