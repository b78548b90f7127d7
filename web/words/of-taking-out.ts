import { learn } from './language.ts';
import { takingOut } from './taking-out.ts';

/** What is said where throws and pictures are taken out. */
learn({ takingOut });
