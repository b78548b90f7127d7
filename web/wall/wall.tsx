/** Wall of one mound. */
export default function Wall(props: { readonly mound: string }) {
  return <main>{props.mound}</main>;
}
