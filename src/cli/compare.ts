import { besideEachOther } from '../engine/compare/variants.ts';
import { renderVariants } from '../report/variants/terminal.ts';
import { type CheckedSide, checkSide } from './comparing/check-side.ts';
import { sideOnDisk } from './comparing/sides.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';

export interface CompareOptions {
  readonly json: boolean;
  readonly all: boolean;
}

/** Runs `storystick compare` and returns its exit code. It judges no variant: that is what `check` is for. */
export async function compareVariants(
  files: readonly string[],
  { json, all }: CompareOptions,
  around: Surroundings,
): Promise<number> {
  const checked: CheckedSide[] = [];
  for (const file of files) {
    const side = await checkSide(sideOnDisk(file), around);
    if (side) checked.push(side);
  }
  // All are looked at, so that one run shows all that is wrong.
  if (checked.length < files.length) return 2;
  const variants = besideEachOther(checked.map(({ compared }) => compared));
  const { width, colour, version } = around;
  if (json) {
    const { renderJsonVariants } = await import('../report/variants/json.ts');
    around.print(renderJsonVariants(variants, { version }));
  } else around.print(renderVariants(variants, { width, colour, all }));
  const defects = checked.flatMap((each) => each.defects);
  for (const defect of defects) around.complain(defectText(defect));
  return defects.length > 0 ? 3 : 0;
}
