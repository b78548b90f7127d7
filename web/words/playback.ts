import { inBoth } from './in-both.ts';

export const playback = inBoth({ title: 'Playback' }, { title: 'Repetición' });
