/** Bench of one mound. */
export default function Bench(props: { readonly mound: string }) {
  return <main>{props.mound}</main>;
}
