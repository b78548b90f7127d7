import type { FamilyAdvice } from '../../core/coaching/families.ts';
import type { FastballEfficiency } from '../../core/coaching/fastball-efficiency.ts';
import { familyEvidence, type FamilyEvidence } from '../../core/session/family-evidence.ts';
import { moundView } from '../../core/session/view.ts';
import type { Book } from './book.ts';

/** What the planning screen says of the families in the open bullpen. */
export const adviceShown = (book: Book): FamilyAdvice => evidenceShown(book).advice;

/** The efficiency of the fastballs of the open bullpen, as the same screen shows it. */
export const efficiencyShown = (book: Book): FastballEfficiency => evidenceShown(book).efficiency;

function evidenceShown(book: Book): FamilyEvidence {
  const view = moundView(book.ledger, null);
  if (view.session === null) throw new Error('no bullpen is open');
  return familyEvidence(view, view.session);
}
