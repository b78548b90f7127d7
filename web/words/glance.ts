import { inBoth } from './in-both.ts';

export const glance = inBoth({ title: 'Glance' }, { title: 'Vistazo' });
