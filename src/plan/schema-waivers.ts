import { day, listOf, section, words } from './fields.ts';

/** Checks whose failure its people accept for a while. A waiver without a reason is read, and found fault with later. */
export const waiversSchema = () =>
  listOf(
    section(
      {
        check: words('balance.sides'),
        subject: words('right side').optional(),
        reason: words('the spare wheel moves to the left in spring').optional(),
        by: words('Robin'),
        until: day,
      },
      '{check: balance.sides, reason: the spare wheel moves to the left in spring, by: Robin, until: 2027-03-01}',
    ),
    '[{check: balance.sides, reason: the spare wheel moves to the left in spring, by: Robin, until: 2027-03-01}]',
  );
