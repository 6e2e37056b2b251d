import type { Build } from '../../build/build.ts';
import type { Compared } from '../../engine/compare/compare.ts';
import type { Rooms } from '../../engine/compare/moves.ts';
import type { Checked } from '../check-plan.ts';

/** One side of a comparison, from a plan that was checked. */
export const comparedOf = (label: string, checked: Extract<Checked, { ok: true }>): Compared => ({
  label,
  report: checked.report,
  data: checked.document.data,
  plan: checked.plan,
  rooms: roomsOf(checked.build),
});

const roomsOf = ({ layout }: Build): Rooms =>
  new Map(
    (layout?.solids ?? []).map(({ name, box, hosts: [host] }) => [
      name,
      { box, ...(host !== undefined && { host }) },
    ]),
  );
