import { createSignal, type Accessor } from 'solid-js';
import { rememberSetting } from '../asked-for.ts';
import { settingsIn, type Panel } from '../settings.ts';

/** What is shown beside the picture; remembered in the address, so that a link restores it. */
export interface PanelRequest {
  readonly asked: Accessor<Panel | null>;
  /** Asking for what is shown puts it away. */
  readonly ask: (panel: Panel) => void;
  readonly open: (panel: Panel) => void;
}

/** As the address has it at first. */
export function createPanelRequest(): PanelRequest {
  const [asked, setAsked] = createSignal(settingsIn(location.search).panel);
  const show = (panel: Panel | null): void => {
    setAsked(panel);
    rememberSetting('panel', panel);
  };
  return { asked, ask: (panel) => show(asked() === panel ? null : panel), open: show };
}
