import { onCleanup } from 'solid-js';

const LINKS = [
  { rel: 'manifest', href: '/glance.webmanifest' },
  { rel: 'apple-touch-icon', href: '/icons/offpace-filled-180.png' },
] as const;

/** Lets a phone put Glance on its home screen: Glance alone, so the links stand in no other page. */
export function installable(): void {
  const links = LINKS.map((link) => Object.assign(document.createElement('link'), link));
  document.head.append(...links);
  onCleanup(() => links.forEach((link) => link.remove()));
}

/** Whether it was opened from the home screen. */
export function isInstalled(): boolean {
  return matchMedia('(display-mode: standalone)').matches;
}
