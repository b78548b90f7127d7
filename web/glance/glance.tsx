/** Glance of one mound. */
export default function Glance(props: { readonly mound: string }) {
  return <main>{props.mound}</main>;
}
