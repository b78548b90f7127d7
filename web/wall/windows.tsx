import type { MoundView } from '../../core/facts/views.ts';

/** The windows of the current trial as small trends. */
export function Windows(props: { readonly view: MoundView; readonly textPx: number }) {
  return <section class="wall-windows" data-text={props.textPx}>{props.view.mound}</section>;
}
